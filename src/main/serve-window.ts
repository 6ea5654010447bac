/** The window's files under `app://window/`: a standard, secure scheme, without which there is no working copy. */
import type { Protocol } from 'electron';
import { windowFile } from '../desk/index.ts';
import { isOurs, scheme } from './own-address.ts';

/** Has to run before the program is ready. */
export function registerScheme(protocol: Pick<Protocol, 'registerSchemesAsPrivileged'>): void {
  protocol.registerSchemesAsPrivileged([
    { scheme, privileges: { standard: true, secure: true, supportFetchAPI: true, codeCache: true } },
  ]);
}

/** Has to run after the program is ready. */
export function serveWindow(protocol: Pick<Protocol, 'handle'>, folder: string): void {
  protocol.handle(scheme, async ({ url, method }) => {
    if (!isOurs(url)) return new Response(null, { status: 404 });
    const { status, headers, body } = await windowFile(folder, method, rawPath(url));
    return new Response(new Uint8Array(body), { status, headers });
  });
}

/** The path as it came, still encoded, so that the one check of paths sees everything. */
function rawPath(url: string): string {
  return new URL(url).pathname;
}
