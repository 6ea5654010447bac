/** Opens the person's own browser, where there is one; the printed address does for the rest. */
import { spawn } from 'node:child_process';

/** The program and its arguments that open an address on the platform. */
export function browserCommand(
  address: string,
  platform: string,
): readonly [program: string, args: readonly string[]] {
  if (platform === 'darwin') return ['open', [address]];
  // No shell: `start` is a word of cmd alone, and the address holds signs that cmd would read.
  if (platform === 'win32') return ['rundll32', ['url.dll,FileProtocolHandler', address]];
  return ['xdg-open', [address]];
}

/** Does not wait, and does not mind when there is no browser. */
export function openBrowser(address: string): void {
  const [program, args] = browserCommand(address, process.platform);
  const child = spawn(program, args, { stdio: 'ignore', detached: true });
  child.on('error', () => undefined);
  child.unref();
}
