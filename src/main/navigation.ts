/** The window shows its own page and nothing else, whatever a link, a script or a dropped file asks for. */
import type { App, WebContents } from 'electron';
import { isOurs } from './own-address.ts';

/** For every page that ever comes to be, not only for the one window. */
export function setupNavigation(app: Pick<App, 'on'>): void {
  app.on('web-contents-created', (_event, contents) => guard(contents));
}

function guard(contents: WebContents): void {
  contents.setWindowOpenHandler(() => ({ action: 'deny' }));
  contents.on('will-attach-webview', (event) => event.preventDefault());
  contents.on('will-navigate', (event) => {
    if (!isOurs(event.url)) event.preventDefault();
  });
  contents.on('will-frame-navigate', (event) => {
    if (!isOurs(event.url)) event.preventDefault();
  });
  contents.on('will-redirect', (event) => {
    if (!isOurs(event.url)) event.preventDefault();
  });
}
