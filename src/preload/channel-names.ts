/**
 * The names of the channels alone, for the sandboxed preload and the browser: they need no schema, and bundling
 * the schemas there would only slow the start. The types keep this list equal to the record in `bridge.ts`.
 */
import type { Channel } from './bridge.ts';

const names = {
  'settings.read': true,
  'settings.write': true,
  'notebooks.list': true,
  'notebook.create': true,
  'notebook.demo': true,
  'notebook.open': true,
  'notebook.append': true,
  'notebook.close': true,
  'notebook.verify': true,
  'copies.list': true,
  'copies.make': true,
  'copies.restore': true,
  'attachment.add': true,
  'attachment.read': true,
  'file.save': true,
} as const satisfies Record<Channel, true>;

/** Every channel, in the order of `bridge.ts`. */
export const channelNames = Object.keys(names) as readonly Channel[];
