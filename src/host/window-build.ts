/** Whether the built window is there and newer than everything it is built from. */
import { spawnSync } from 'node:child_process';
import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';

const sources = ['src', 'templates', 'electron.vite.config.ts', 'package.json'];
const products = ['out/main/index.js', 'out/preload/preload.cjs', 'out/renderer/index.html'];

/** `undefined` when the build can be used as it is; else why not, in a few words. */
export function staleBuild(root: string): string | undefined {
  const built = products.map((product) => changed(join(root, product)));
  if (built.some((time) => time === undefined)) return 'it was not built yet';
  const oldest = Math.min(...built.map((time) => time ?? 0));
  const newest = Math.max(...sources.map((source) => newestIn(join(root, source))));
  return newest > oldest ? 'its sources have changed' : undefined;
}

/** Builds it; what the build tool says is shown only when it fails. @returns whether it went well */
export function buildWindow(root: string): boolean {
  const tool = join(root, 'node_modules', 'electron-vite', 'bin', 'electron-vite.js');
  const result = spawnSync(process.execPath, [tool, 'build', '--logLevel', 'warn'], {
    cwd: root,
    encoding: 'utf8',
  });
  if (result.status !== 0) process.stderr.write(`${result.stdout}${result.stderr}`);
  return result.status === 0;
}

/** Milliseconds of the newest file; tests are no part of the window. */
function newestIn(path: string): number {
  const entries = statSync(path, { throwIfNoEntry: false })?.isDirectory()
    ? readdirSync(path, { withFileTypes: true })
    : undefined;
  if (entries === undefined) return changed(path) ?? 0;
  return entries
    .filter(({ name }) => !/\.test\.tsx?$/.test(name))
    .reduce((newest, { name }) => Math.max(newest, newestIn(join(path, name))), 0);
}

function changed(path: string): number | undefined {
  return statSync(path, { throwIfNoEntry: false })?.mtimeMs;
}
