/** The menu: what the system expects, text size, and nothing that the window does better itself. */
import type { Menu, MenuItemConstructorOptions } from 'electron';

export function menuTemplate(platform: string): MenuItemConstructorOptions[] {
  return [
    platform === 'darwin' ? { role: 'appMenu' } : { label: 'File', submenu: [{ role: 'quit' }] },
    { role: 'editMenu' },
    {
      label: 'View',
      submenu: [
        { role: 'zoomIn' },
        { role: 'zoomOut' },
        { role: 'resetZoom' },
        { type: 'separator' },
        { role: 'togglefullscreen' },
      ],
    },
  ];
}

export function setupMenu(
  menu: Pick<typeof Menu, 'buildFromTemplate' | 'setApplicationMenu'>,
  platform: string,
): void {
  menu.setApplicationMenu(menu.buildFromTemplate(menuTemplate(platform)));
}
