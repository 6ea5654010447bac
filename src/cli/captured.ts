/** Runs a command line in this process, for this folder's tests: what it printed, and how it ended. */
import { run } from './run.ts';
import type { ExitCode } from './terminal.ts';

export interface Captured {
  readonly code: ExitCode;
  readonly out: string;
  readonly err: string;
}

/** @param input  pieces of the standard input */
export async function captured(
  args: readonly string[],
  input: readonly (Uint8Array | string)[] = [],
): Promise<Captured> {
  let out = '';
  let err = '';
  async function* pieces() {
    yield* input;
  }
  const code = await run(args, {
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
    stdin: pieces(),
  });
  return { code, out, err };
}
