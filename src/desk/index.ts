/**
 * `desk/`: notebooks on the disk. The journal with its hash chain, attachments by their SHA-256, the lock, the
 * settings, copies; opening, verifying, rebuilding, restoring; and what every place that shows the window needs: the checked door
 * to the desk, the files of the built window, the content policy. Node only; form of the files in docs/journal.md.
 */
export { answer } from './answer.ts';
export { attachmentPath, largestAttachment } from './attachments.ts';
export { fileStamp, timeStamp } from './clock.ts';
export { contentPolicy, fileHeaders } from './content-policy.ts';
export { listCopies, makeCopy } from './copies.ts';

export { type DeskSpec, deskHandlers, homeFolder, type OpenDesk } from './desk.ts';
export { errorCode, type FileFacts, type Files, fileReason, nodeFiles, type OpenFile } from './files.ts';
export type { JournalHeading } from './journal-line.ts';
export { type JournalReading, readJournal } from './journal-reading.ts';
export { type Processes, thisComputer } from './lock.ts';
export { type Merging, mergeNotebooks } from './merge-notebooks.ts';
export { notebookName } from './names.ts';
export {
  createNotebook,
  type Ground,
  type NewNotebook,
  type NotebookFolder,
  openNotebook,
} from './notebook-folder.ts';
export { type ReceivedNotebook, receiveNotebook } from './receive-notebook.ts';
export { type Restoring, restoreNotebook } from './restore.ts';
export { readSettings } from './settings.ts';
export { type Rebuilding, rebuild, verify } from './verify.ts';
export { resolveInside, type WindowFile, windowFile } from './window-files.ts';
export { writeDemo } from './write-demo.ts';
export { writeWhole } from './write-whole.ts';
