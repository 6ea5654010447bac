/**
 * Programs outside of this project that some tests judge by. They are not skipped where one is missing: it is
 * installed if that can be done without asking, else the test fails and says what to install.
 */
import { spawnSync } from 'node:child_process';

/** Program → Debian package. */
const PACKAGES = {
  gcc: 'gcc',
  pdffonts: 'poppler-utils',
  pdfimages: 'poppler-utils',
  pdfinfo: 'poppler-utils',
  pdftoppm: 'poppler-utils',
  pdftotext: 'poppler-utils',
  python3: 'python3',
  qpdf: 'qpdf',
  sha512sum: 'coreutils',
  unzip: 'unzip',
} as const;

export type Tool = keyof typeof PACKAGES;

function present(tool: string): boolean {
  return spawnSync('sh', ['-c', `command -v ${tool}`]).status === 0;
}

/** Makes sure that the programs are there. @throws Error that names what to install */
export function requireTools(...tools: Tool[]): void {
  const missing = tools.filter((tool) => !present(tool));
  if (missing.length === 0) return;
  const packages = [...new Set(missing.map((tool) => PACKAGES[tool]))];
  if (present('apt-get')) {
    spawnSync('apt-get', ['install', '-y', '--no-install-recommends', ...packages], { stdio: 'ignore' });
  }
  const still = missing.filter((tool) => !present(tool));
  if (still.length > 0) {
    throw new Error(`these tests need ${still.join(', ')}: install the packages ${packages.join(' and ')}`);
  }
}

/** Runs one of them and gives what it prints. @throws Error with its complaint when it fails */
export function run(tool: Tool, args: readonly string[]): string {
  const result = spawnSync(tool, args, { encoding: 'utf8', maxBuffer: 256 * 1024 * 1024 });
  if (result.error) throw result.error;
  if (result.status !== 0) throw new Error(`${tool} ${args.join(' ')}: ${result.stderr || result.stdout}`);
  return result.stdout;
}
