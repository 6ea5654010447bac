/** `calc`: the registered calculations, listed and run on SI values. */
import { readFile } from 'node:fs/promises';
import { z } from 'zod';
import { errorCode, fileReason } from '../desk/index.ts';
import { type CalculationInput, registry, runCalculation } from '../margins/index.ts';
import type { Calculation } from '../mechanics/index.ts';
import type { Command } from './run.ts';
import {
  DAMAGED,
  type ExitCode,
  GOOD,
  json,
  line,
  NO,
  Stop,
  stopAt,
  type Terminal,
  USAGE,
} from './terminal.ts';

export const calcCommand: Command = {
  usage: ['list [--json]', 'run ID --input FILE|-'],
  summary:
    'The calculations with their inputs, outputs, units, validity and source; or one of them on a JSON object of SI ' +
    'values, each a number, {"value": …, "standardUncertainty": …}, or a list of these. Prints JSON.',
  options: { json: { type: 'boolean' }, input: { type: 'string' } },
  async run([what, id, ...extra], options, terminal) {
    if (what === 'list' && id === undefined) return list(options.json === true, terminal);
    if (what === 'run' && id !== undefined && extra.length === 0 && typeof options.input === 'string') {
      return runOne(id, options.input, terminal);
    }
    throw new Stop(USAGE, 'calc takes: list [--json], or: run ID --input FILE|-');
  },
};

function list(asJson: boolean, terminal: Terminal): ExitCode {
  const calculations = [...registry.values()];
  if (asJson) terminal.out(json(calculations.map(described)));
  else for (const calculation of calculations) terminal.out(line(calculation.id, calculation.title));
  return GOOD;
}

function described({
  id,
  title,
  equation,
  inputs,
  outputs,
  validity,
  source,
  example,
  related,
}: Calculation) {
  return { id, title, equation, inputs, outputs, validity, source, example, related };
}

async function runOne(id: string, input: string, terminal: Terminal): Promise<ExitCode> {
  const result = runCalculation(id, await readValues(input, terminal));
  if (!result.ok)
    throw stopAt(result.problem.code === 'calculation.out-of-domain' ? NO : USAGE, result.problem);
  const outputs = Object.fromEntries(
    Object.entries(result.value).map(
      ([name, { value, standardUncertainty, unit, meaning, contributions }]) => [
        name,
        { value, unit, standardUncertainty, meaning, contributions: Object.fromEntries(contributions) },
      ],
    ),
  );
  terminal.out(json({ id, outputs }));
  return GOOD;
}

const single = z.union([
  z.number(),
  z.strictObject({ value: z.number(), standardUncertainty: z.number().default(0) }),
]);
const values = z.record(z.string(), z.union([single, z.array(single)]));

async function readValues(
  input: string,
  terminal: Terminal,
): Promise<Readonly<Record<string, CalculationInput>>> {
  const place = input === '-' ? 'standard input' : input;
  let text = '';
  try {
    if (input === '-') {
      const decoder = new TextDecoder();
      for await (const piece of terminal.stdin) {
        text += typeof piece === 'string' ? piece : decoder.decode(piece, { stream: true });
      }
    } else {
      text = await readFile(input, 'utf8');
    }
  } catch (error) {
    if (errorCode(error) === 'ENOENT')
      throw new Stop(USAGE, `${place}: there is no such file. Name a file of JSON, or - for standard input.`);
    throw new Stop(DAMAGED, `${place}: cannot be read (${fileReason(error)}). Name a file of JSON.`);
  }
  let parsed: unknown;
  try {
    parsed = JSON.parse(text);
  } catch (error) {
    const detail = error instanceof Error ? error.message : String(error);
    throw new Stop(DAMAGED, `${place}: is not JSON (${detail}). Give an object of SI values by their names.`);
  }
  const checked = values.safeParse(parsed);
  if (!checked.success) {
    const issue = checked.error.issues[0];
    throw new Stop(
      DAMAGED,
      `${place}: ${issue?.path.join('.') || 'the whole'} does not have the form. Give an object of SI values by ` +
        'their names, each a number, {"value": …, "standardUncertainty": …}, or a list of these.',
    );
  }
  return checked.data;
}
