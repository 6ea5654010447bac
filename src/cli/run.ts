/** Finds the command, reads its options, runs it, and turns what stopped it into a sentence and an exit code. */
import { type ParseArgsConfig, parseArgs } from 'node:util';
import { calcCommand } from './calc.ts';
import { copiesCommand, restoreCommand } from './copies.ts';
import { demoCommand } from './demo.ts';
import { dossierCommand } from './dossier.ts';
import { exportCommand } from './export.ts';
import { help } from './help.ts';
import { marginsCommand } from './margins.ts';
import { mergeCommand } from './merge.ts';
import { reportCommand } from './report.ts';
import { type ExitCode, GOOD, Stop, type Terminal, USAGE } from './terminal.ts';
import { rebuildCommand, verifyCommand } from './upkeep.ts';

export interface Command {
  /** What follows the name on the command line. */
  readonly usage: readonly string[];
  readonly summary: string;
  readonly options: NonNullable<ParseArgsConfig['options']>;
  readonly run: (
    words: readonly string[],
    options: Readonly<Record<string, string | boolean | undefined>>,
    terminal: Terminal,
  ) => Promise<ExitCode>;
}

export const commands: Readonly<Record<string, Command>> = {
  calc: calcCommand,
  demo: demoCommand,
  margins: marginsCommand,
  report: reportCommand,
  dossier: dossierCommand,
  export: exportCommand,
  verify: verifyCommand,
  rebuild: rebuildCommand,
  copies: copiesCommand,
  restore: restoreCommand,
  merge: mergeCommand,
};

export async function run(args: readonly string[], terminal: Terminal): Promise<ExitCode> {
  const [name, ...rest] = args;
  if (name === undefined || name === '--help' || name === '-h' || name === 'help') {
    terminal.out(help(commands));
    return name === undefined ? USAGE : GOOD;
  }
  const command = Object.hasOwn(commands, name) ? commands[name] : undefined;
  try {
    if (!command)
      throw new Stop(
        USAGE,
        `there is no command “${name}”. The commands are: ${Object.keys(commands).join(', ')}.`,
      );
    const { words, options } = read(command, rest);
    if (options.help) {
      terminal.out(help({ [name]: command }));
      return GOOD;
    }
    return await command.run(words, options, terminal);
  } catch (error) {
    if (!(error instanceof Stop)) throw error;
    terminal.err(`${error.message}\n`);
    if (error.code === USAGE) terminal.err('See: counterpoise --help\n');
    return error.code;
  }
}

function read(command: Command, args: readonly string[]) {
  try {
    const { positionals, values } = parseArgs({
      args: [...args],
      options: { ...command.options, help: { type: 'boolean' } },
      allowPositionals: true,
      strict: true,
    });
    return { words: positionals, options: values as Record<string, string | boolean | undefined> };
  } catch (error) {
    throw new Stop(USAGE, error instanceof Error ? error.message : String(error));
  }
}
