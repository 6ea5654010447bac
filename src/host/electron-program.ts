/**
 * Where Electron's program file is, if anywhere. Looked for with plain file calls: loading the package
 * `electron` itself would try to download the program.
 */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

const names: Readonly<Record<string, string>> = {
  darwin: 'Electron.app/Contents/MacOS/Electron',
  mas: 'Electron.app/Contents/MacOS/Electron',
  win32: 'electron.exe',
};

/** Full path of the program file, or `undefined` when it is not installed. */
export function electronProgram(
  root: string,
  environment: Readonly<Record<string, string | undefined>> = process.env,
  platform: string = process.platform,
): string | undefined {
  const folder = join(root, 'node_modules', 'electron');
  let name: string;
  try {
    name = readFileSync(join(folder, 'path.txt'), 'utf8').trim();
  } catch {
    name = names[platform] ?? 'electron';
  }
  const override = environment.ELECTRON_OVERRIDE_DIST_PATH;
  const program = override ? join(override, name) : join(folder, 'dist', name);
  return existsSync(program) ? program : undefined;
}
