/** No network: a request that is not for the window's own files, or for data it made itself, is cancelled. */
import type { Session } from 'electron';
import { isOurs } from './own-address.ts';

export function setupRequests(session: Pick<Session, 'webRequest'>, isPackaged: boolean): void {
  session.webRequest.onBeforeRequest(({ url }, answer) => answer({ cancel: !isAllowed(url, isPackaged) }));
}

/** The developer tools load their own pages, which only an unpackaged program shows. */
export function isAllowed(url: string, isPackaged: boolean): boolean {
  if (isOurs(url) || url.startsWith('data:')) return true;
  if (url.startsWith('blob:')) return isOurs(url.slice('blob:'.length));
  return !isPackaged && url.startsWith('devtools:');
}
