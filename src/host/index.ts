/**
 * `host/`: the same window in a browser where Electron's program file is absent, served on loopback.
 * `server.ts` is the Node side; the window imports `client.ts`, which has no Node in it.
 */
export { type Host, type HostSpec, startHost } from './server.ts';
