/** Finds the desk (Electron's preload, or the host on loopback) and draws the window. */
// These two come before everything else.
import './no-code-from-text.ts';
import './trusted-types.ts';

import './design/tokens.css';
import './design/base.css';
import './design/layout.css';
import './design/controls.css';
import { createRoot } from 'react-dom/client';
import { browserSurroundings, hostDesk, takeKey } from '../host/client.ts';
import type { Desk, Surroundings } from '../preload/index.ts';
import { phrase } from '../quantity/index.ts';
import { App } from './app.tsx';

async function start(): Promise<void> {
  const { desk, surroundings } = window.counterpoise ?? reachHost();
  const settings = await desk['settings.read']({});
  const root = document.getElementById('root');
  if (!root) throw new Error('the page has no place to draw in');
  if (!settings.ok) {
    const { reason, remedy } = phrase(settings.problem);
    root.textContent = `${reason} ${remedy}`;
    return;
  }
  createRoot(root).render(<App desk={desk} surroundings={surroundings} initial={settings.value} />);
}

function reachHost(): { desk: Desk; surroundings: Surroundings } {
  return { desk: hostDesk(takeKey() ?? ''), surroundings: browserSurroundings() };
}

void start();
