/**
 * The real program: the same contract as everywhere, and that Electron behaves as the stand-in of the other tests
 * does. Where the program file is absent this suite is not run, and says so.
 */
import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from '@playwright/test';
import { channelNames } from '../../src/preload/index.ts';
import { deskContract } from '../contract/desk-contract.ts';
import { deskInPage } from './desk-in-page.ts';
import { environment, hindrance, program, root, running } from './launch.ts';

const reason = hindrance();
if (reason !== undefined) {
  console.log(`not run: ${reason}`);
  test.skip(`not run: ${reason}`, () => undefined);
} else {
  test.describe('the desk inside Electron', () => {
    for (const [index, { title, run }] of deskContract.entries()) {
      test(title, () => running(({ page }) => run(deskInPage(page), `Real ${index}`)));
    }
  });

  test.describe('the window', () => {
    test('is our own page, with the desk and nothing of Node or Electron', () =>
      running(async ({ page, errors }) => {
        expect(page.url()).toMatch(/^app:\/\/window\//);
        const found = await page.evaluate(() => ({
          names: Object.keys(window.counterpoise ?? {}),
          channels: Object.keys(window.counterpoise?.desk ?? {}),
          frozen: Object.isFrozen(window.counterpoise?.desk),
          foreign: ['require', 'process', 'module', 'Buffer', 'global'].filter((name) => name in window),
          isolated: crossOriginIsolated,
        }));
        expect(found).toEqual({
          names: ['desk', 'surroundings'],
          channels: [...channelNames],
          frozen: true,
          foreign: [],
          isolated: true,
        });
        expect(errors).toEqual([]);
      }));

    test('keeps a working copy: its scheme has storage', () =>
      running(async ({ page }) => {
        const opened = await page.evaluate(
          () =>
            new Promise<string>((resolve) => {
              const request = indexedDB.open('probe');
              request.onsuccess = () => resolve('opened');
              request.onerror = () => resolve(String(request.error));
            }),
        );
        expect(opened).toBe('opened');
      }));

    test('turns no text into markup or code, and reaches no network', () =>
      running(async ({ page }) => {
        const tried = await page.evaluate(async () => {
          const outcome = async (attempt: () => unknown): Promise<string> => {
            try {
              await attempt();
              return 'done';
            } catch {
              return 'refused';
            }
          };
          return [
            await outcome(() => {
              document.createElement('p').innerHTML = '<b>x</b>';
            }),
            await outcome(() => new Function('return 1')()),
            await outcome(() => fetch('https://elsewhere.example/')),
            await outcome(() => fetch('file:///etc/passwd')),
            await outcome(() => {
              if (window.open('https://elsewhere.example/') === null) throw new Error('no window');
            }),
          ];
        });
        expect(tried).toEqual(tried.map(() => 'refused'));
        await page.evaluate(() => {
          location.href = 'https://elsewhere.example/';
        });
        await page.waitForTimeout(300);
        expect(page.url()).toMatch(/^app:\/\/window\//);
      }));

    test('runs in the sandbox of the operating system', async () => {
      test.skip(process.getuid?.() === 0, 'not run: Chromium has no sandbox for the administrator');
      await running(async ({ page }) => expect(page.url()).toMatch(/^app:\/\/window\//), true);
    });
  });

  test.describe('the program', () => {
    test('gives its locks back when it ends', () =>
      running(async ({ app, page, home }) => {
        const made = await deskInPage(page)['notebook.create']({ name: 'Rig', author: 'B' });
        expect(made.ok).toBe(true);
        expect(existsSync(join(home, 'Rig', 'lock'))).toBe(true);
        await app.close();
        expect(existsSync(join(home, 'Rig', 'lock'))).toBe(false);
      }));

    test('runs once: a second start gives way', () =>
      running(async ({ app, home }) => {
        const userData = await app.evaluate((electron) => electron.app.getPath('userData'));
        const args = process.platform === 'linux' ? ['--no-sandbox', root] : [root];
        const second = spawn(program ?? '', args, { env: environment(home, userData), stdio: 'ignore' });
        const code = await new Promise((resolve) => second.on('exit', resolve));
        expect(code).toBe(0);
        expect(app.windows()).toHaveLength(1);
      }));

    test('treats calls at the wrong time as the stand-in does', () =>
      running(async ({ app }) => {
        const refused = await app.evaluate(({ app: real, protocol, ipcMain }) => {
          const throws = (attempt: () => void): boolean => {
            try {
              attempt();
              return false;
            } catch {
              return true;
            }
          };
          return {
            enableSandbox: throws(() => real.enableSandbox()),
            registerSchemes: throws(() => protocol.registerSchemesAsPrivileged([])),
            handleSchemeTwice: throws(() => protocol.handle('app', () => new Response())),
            handleChannelTwice: throws(() => ipcMain.handle('desk:settings.read', () => undefined)),
            unknownPath: throws(() => real.getPath('nowhere' as 'home')),
          };
        });
        expect(refused).toEqual({
          enableSandbox: true,
          registerSchemes: true,
          handleSchemeTwice: true,
          handleChannelTwice: true,
          unknownPath: true,
        });
      }));
  });
}
