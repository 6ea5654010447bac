/** Finds the desk (Electron's preload, or the host on loopback) and draws the window. */
// These two come before everything else.
import './no-code-from-text.ts';
import './trusted-types.ts';

import './design/tokens.css';
import './design/base.css';
import './design/layout.css';
import './design/navigation.css';
import './design/title-block.css';
import './design/controls.css';
import './design/tables.css';
import './design/panels.css';
import './design/margins.css';
import './design/dialogs.css';
import './design/start.css';
import './design/checklist.css';
import './design/checklist-item.css';
import { createRoot } from 'react-dom/client';
import { browserSurroundings, hostDesk, takeKey } from '../host/client.ts';
import type { Desk, Surroundings } from '../preload/index.ts';
import { phrase } from '../quantity/index.ts';
import { App } from './app.tsx';

async function start(): Promise<void> {
  const { desk, surroundings } = window.counterpoise ?? reachHost();
  const root = document.getElementById('root');
  if (!root) throw new Error('the page has no place to draw in');
  const first = await desk['settings.read']({});
  // Settings that could not be understood were moved aside when that was told; the usual ones are there now.
  const settings = first.ok ? first : await desk['settings.read']({});
  if (!settings.ok) {
    const { reason, remedy } = phrase(settings.problem);
    root.textContent = `${reason} ${remedy}`;
    return;
  }
  createRoot(root).render(
    <App
      desk={desk}
      surroundings={surroundings}
      initial={settings.value}
      told={first.ok ? undefined : first.problem}
    />,
  );
}

function reachHost(): { desk: Desk; surroundings: Surroundings } {
  return { desk: hostDesk(takeKey() ?? ''), surroundings: browserSurroundings() };
}

void start();
