/** `export`: the figures of a revision for firmware, scripts and spreadsheets. */
import { resolve } from 'node:path';
import { fileReason, nodeFiles, writeWhole } from '../desk/index.ts';
import { exportForms, exportRevision } from '../dossier/index.ts';
import { findRevision, readNotebook } from './notebook.ts';
import type { Command } from './run.ts';
import { DAMAGED, GOOD, line, Stop, USAGE } from './terminal.ts';

export const exportCommand: Command = {
  usage: [`NOTEBOOK --as ${exportForms.join('|')} [--revision R] [--prototype P] [--out FILE]`],
  summary:
    'Every figure and the mass table of a revision in SI units, as a C header, a module of Python, CSV or JSON: units ' +
    'in the names, letter and fingerprint of the revision at the top. The newest revision where none is named.',
  options: {
    as: { type: 'string' },
    revision: { type: 'string' },
    prototype: { type: 'string' },
    out: { type: 'string' },
  },
  async run([folder, ...extra], options, terminal) {
    const {
      as,
      revision: revisionName,
      prototype: prototypeName,
      out,
    } = options as Readonly<Record<string, string | undefined>>;
    if (folder === undefined || extra.length > 0) throw new Stop(USAGE, 'export takes one NOTEBOOK.');
    const form = exportForms.find((each) => each === as);
    if (form === undefined)
      throw new Stop(USAGE, `export needs --as with one of: ${exportForms.join(', ')}.`);
    const { state } = await readNotebook(folder, terminal);
    const { prototype, revision } = findRevision(state, prototypeName, revisionName);
    const text = exportRevision(prototype, revision, form);
    if (out === undefined) {
      terminal.out(text);
      return GOOD;
    }
    try {
      await writeWhole(nodeFiles, resolve(out), new TextEncoder().encode(text));
    } catch (error) {
      throw new Stop(DAMAGED, `${out}: cannot be written (${fileReason(error)}). Name another place.`);
    }
    terminal.out(line(`Wrote ${out}: figures of revision ${revision.letter}`));
    return GOOD;
  },
};
