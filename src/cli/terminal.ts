/** What a command may touch, and how it ends. Commands are called by tests in the same way as by the shell. */
import { type Problem, sentence } from '../quantity/index.ts';

export interface Terminal {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  readonly stdin: AsyncIterable<Uint8Array | string>;
}

export const GOOD = 0;
/** The command line is good and the data say no: a margin fails, a calculation is not defined there, a notebook is open elsewhere. */
export const NO = 1;
/** The command line, or the names in it, are off. */
export const USAGE = 2;
/** A file cannot be read for what it should be. */
export const DAMAGED = 3;

export type ExitCode = typeof GOOD | typeof NO | typeof USAGE | typeof DAMAGED;

/** Something that ends the command with a sentence on the error output. */
export class Stop extends Error {
  readonly code: ExitCode;

  constructor(code: ExitCode, message: string) {
    super(message);
    this.name = 'Stop';
    this.code = code;
  }
}

export function stopAt(code: ExitCode, problem: Problem): Stop {
  return new Stop(code, sentence(problem));
}

export function line(...cells: readonly string[]): string {
  return `${cells.join('\t')}\n`;
}

/** JSON for machines: indented, with a line end. */
export function json(value: unknown): string {
  return `${JSON.stringify(value, undefined, 2)}\n`;
}
