import { describe, expect, it } from 'vitest';
import { menuTemplate } from './menu.ts';

describe('the menu', () => {
  it.each(['linux', 'win32', 'darwin'])(
    'on %s can quit, edit text and change its size, and nothing more',
    (platform) => {
      const roles = menuTemplate(platform).flatMap(({ role, submenu }) => [
        role,
        ...(Array.isArray(submenu) ? submenu.map((item) => item.role) : []),
      ]);
      expect(new Set(roles.filter((role) => role !== undefined))).toEqual(
        new Set([
          platform === 'darwin' ? 'appMenu' : 'quit',
          'editMenu',
          'zoomIn',
          'zoomOut',
          'resetZoom',
          'togglefullscreen',
        ]),
      );
    },
  );
});
