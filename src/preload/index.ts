/**
 * `preload/`: what the window may ask of the desk, as types and schemas, and the script that hands it to the
 * window inside Electron. The script itself (`preload.ts`) is an entry of the build and imported by nobody.
 */
export {
  type Arguments,
  type Channel,
  type Copies,
  type CopyListing,
  type CopyMade,
  channels,
  type Desk,
  type NotebookListing,
  type OpenNotebook,
  type Outcome,
  type RecordCounts,
  type Results,
  type Settings,
  type Surroundings,
  settings,
  type Verification,
} from './bridge.ts';
export { channelNames } from './channel-names.ts';
