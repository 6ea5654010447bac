import { describe, expect, it } from 'vitest';
import { readDemoState } from '../../../tests/demo-state.ts';
import { readFonts } from '../../../tests/fonts.ts';
import { requireTools } from '../../../tests/tools.ts';
import { assess } from '../../margins/index.ts';
import { isKnown, type NotebookState, type Run } from '../../notebook/index.ts';
import { equationDrawing } from '../equation/equation-drawing.ts';
import { renderPdf } from '../pdf/index.ts';
import type { Block, Cell, Inline, ReportDocument } from '../tree.ts';
import type { ReportSource } from './report-source.ts';
import { revisionReport } from './revision-report.ts';
import { runReport } from './run-report.ts';

const { state, attachments } = readDemoState();
const source = (change: Partial<ReportSource> = {}): ReportSource => ({
  state,
  author: 'Ines Okafor',
  now: '2026-04-02T10:30:00+01:00',
  paper: 'A4',
  attachment: async (sha256) => attachments.get(sha256),
  ...change,
});

async function made(report: Promise<{ ok: boolean }>): Promise<ReportDocument> {
  const result = (await report) as Awaited<ReturnType<typeof runReport>>;
  if (!result.ok) throw new Error(JSON.stringify(result.problem));
  return result.value;
}

const inlineText = (run: Inline): string => {
  if (typeof run === 'string') return run;
  if ('strong' in run) return run.strong;
  if ('emphasis' in run) return run.emphasis;
  return 'code' in run ? run.code : run.spoken;
};
const cellText = (cell: Cell): string => (typeof cell === 'string' ? cell : cell.map(inlineText).join(''));
const blockText = (block: Block): string => {
  switch (block.type) {
    case 'heading':
      return block.text;
    case 'caution':
      return `${block.signal} ${block.texts.join(' ')}`;
    case 'paragraph':
      return block.content.map(inlineText).join('');
    case 'list':
      return block.items.map((item) => item.map(inlineText).join('')).join('\n');
    case 'table':
      return [block.caption, ...block.rows.map((row) => row.map(cellText).join(' | '))].join('\n');
    case 'illustration':
      return `${block.drawing.title} ${block.drawing.description} ${block.caption}`;
    case 'picture':
      return block.caption;
    case 'equation':
      return block.spoken;
    case 'rule':
      return '';
  }
};
const textOf = ({ blocks }: ReportDocument): string =>
  blocks.map(blockText).join('\n').replaceAll('\u202f', ' ');

function changedRun(id: string, change: (run: Run) => Run): NotebookState {
  const run = state.run[id];
  if (!run) throw new Error(`no run ${id}`);
  return { ...state, run: { ...state.run, [id]: change(run) } };
}

const designRecord = await made(revisionReport(source(), 'revision-c'));
const abortedRun = await made(runReport(source(), 'run-2'));

describe('the design record of a revision', () => {
  const report = designRecord;
  const text = textOf(report);
  const revision = state.revision['revision-c'];
  const prototype = state.prototype[revision?.prototype ?? ''];
  if (!revision || !prototype) throw new Error('the demo has no revision C');
  const assessment = assess(prototype, revision);

  it('gives every margin with its verdict, and draws it', () => {
    const table = report.blocks.find((block) => block.type === 'table');
    const rows =
      table?.type === 'table'
        ? table.rows.map((row) => [cellText(row[0] ?? ''), cellText(row.at(-1) ?? '')])
        : [];
    expect(rows).toEqual(assessment.margins.map(({ title, verdict }) => [title, verdict]));
    const drawn = report.blocks.filter((block) => block.type === 'illustration');
    expect(drawn.length).toBe(assessment.margins.length + 1);
  });

  it('shows every input of the mass table and of the forms as it was typed', () => {
    for (const { name, trace, result } of assessment.figures.values()) {
      if (trace.kind !== 'fact' || !isKnown(trace.field) || trace.path.startsWith('parts/')) continue;
      if (trace.path.includes('/sections/')) continue;
      expect(result.ok, name).toBe(true);
      expect(text, name).toContain(trace.field.typed);
    }
    for (const part of Object.values(revision.parts)) expect(text).toContain(part.name);
  });

  it('sets the equation of each calculation that a margin rests on, all of them typeset', () => {
    const equations = report.blocks.filter((block) => block.type === 'equation');
    expect(equations.length).toBeGreaterThan(15);
    for (const { tex } of equations) expect(equationDrawing(tex), tex).toBeDefined();
    expect(text).toMatch(/Valid: .+ Source: /);
  });

  it('names the decision rule, and promises nothing', () => {
    expect(text).toContain('k = 1.645');
    expect(text).toContain('JCGM 106');
    expect(text).toContain('No figure in it is a promise of safety');
    expect(text).not.toMatch(/guarantee|certified|is safe\b|safe to/i);
  });

  it('says what was changed since the revision that it was made from', () => {
    expect(text).toContain('What is new since revision B');
    expect(text).toMatch(/Lean to recover from: in doubt before, holds now/);
  });

  it('tells of the failure that it corrects, with the run that verified the correction', () => {
    expect(text).toContain('Lower gimbal bearing walks out of its seat');
    expect(text).toContain('Verified by: run 3');
  });

  it('prints the log with its calculations worked out', () => {
    expect(text).toContain('Where we stand');
    expect(text).toMatch(/K = toppling_stiffness \| [\d.]+\(\d+\) N·m/);
  });

  it('says that a draft is one', async () => {
    const draft = {
      ...state,
      revision: { ...state.revision, 'revision-c': { ...revision, status: 'draft' as const } },
    };
    expect(textOf(await made(revisionReport(source({ state: draft }), 'revision-c')))).toContain(
      'is a draft',
    );
    expect(text).not.toContain('is a draft');
  });

  it('prints the pictures of the log, and names one that is missing', async () => {
    const withPicture = await made(revisionReport(source(), 'revision-a'));
    expect(withPicture.blocks.some((block) => block.type === 'picture')).toBe(true);
    const without = await made(revisionReport(source({ attachment: async () => undefined }), 'revision-a'));
    expect(without.blocks.some((block) => block.type === 'picture')).toBe(false);
    expect(textOf(without)).toContain('not printed: its file is missing');
  });

  it('warns of the rotor, and worse where it is too weak', async () => {
    expect(text).toMatch(/WARNING .*rotor/);
    expect(report.blocks[0]?.type).not.toBe('caution');
    const weak = {
      ...state,
      revision: {
        ...state.revision,
        'revision-c': {
          ...revision,
          ...(revision.rotor
            ? {
                rotor: {
                  ...revision.rotor,
                  yieldStrength: { typed: '2 MPa', si: 2e6, u: 0, basis: 'data sheet' as const },
                },
              }
            : {}),
        },
      },
    };
    const [first] = (await made(revisionReport(source({ state: weak }), 'revision-c'))).blocks;
    expect(first).toMatchObject({ type: 'caution', signal: 'DANGER' });
  });
});

describe('the report of a run', () => {
  const report = abortedRun;
  const text = textOf(report);
  const run = state.run['run-2'];
  if (!run) throw new Error('the demo has no run 2');

  it('puts every item of the checklist down with its answer, its initials and its time', () => {
    for (const [index, item] of run.items.entries()) {
      const words = item.text.replaceAll('\u202f', ' ');
      const line = text
        .split('\n')
        .find((each) => each.startsWith(`${index + 1} | `) && each.includes(words));
      expect(line, item.id).toBeDefined();
      const answer = run.answers[item.id];
      if (answer) expect(line).toContain(answer.initials);
      else expect(line).toContain('not answered');
    }
  });

  it('lists what was left open and what was not met as departures', () => {
    expect(text).toContain('The run was aborted');
    expect(text).toMatch(/3 items of the checklist of 57 not answered/);
    expect(text).toMatch(/2 items of the checklist answered and not met: “Hold 6750 rpm/);
  });

  it('does not take the stored mark of an answer for granted', async () => {
    const measured = run.items.find(
      (item) => item.measured?.high !== undefined && run.answers[item.id]?.reading,
    );
    if (!measured) throw new Error('no measured item');
    const forged = changedRun('run-2', (before) => {
      const answer = before.answers[measured.id];
      if (!answer?.reading) return before;
      const reading = { ...answer.reading, si: 1e6, typed: '1000000 V' };
      return { ...before, answers: { ...before.answers, [measured.id]: { ...answer, reading, met: true } } };
    });
    expect(textOf(await made(runReport(source({ state: forged }), 'run-2')))).toContain('Not met: 1000000 V');
  });

  it('sets what was measured beside what was predicted, with a judgement', async () => {
    expect(text).toMatch(/Speed reached \| – \| 9000\(58\) rpm \| – \| not read/);
    const whole = textOf(await made(runReport(source(), 'run-3')));
    expect(whole).toMatch(/Speed reached \| 8980\(23\) rpm \| 9000\(58\) rpm \| −20 rpm \| agrees/);
    const slow = changedRun('run-3', (before) => {
      const reading = before.readings['speed-reached'];
      if (!reading) throw new Error('no speed was read');
      const si = reading.si * 0.9;
      return { ...before, readings: { ...before.readings, 'speed-reached': { ...reading, si } } };
    });
    expect(textOf(await made(runReport(source({ state: slow }), 'run-3')))).toMatch(/rpm \| does not agree/);
  });

  it('tells what was gone past, by whom and why, and when a clock was set during a wait', async () => {
    const what = 'Bench spin: the margin “Strength of the rotor” is in doubt.';
    const changed = changedRun('run-3', (before) => {
      const wait = before.answers['after-run.coast-down-wait'];
      if (!wait?.waited) throw new Error('nothing was waited for');
      const waited = { ...wait.waited, clockShift: -3600 };
      return {
        ...before,
        overrides: {
          'override-1': {
            code: 'readiness.margin',
            subject: 'rotor-strength',
            what,
            name: 'Ines Okafor',
            reason: 'Bar certificate seen.',
            at: '2026-03-15T16:29:00+01:00',
          },
        },
        answers: { ...before.answers, 'after-run.coast-down-wait': { ...wait, waited } },
      };
    });
    const told = textOf(await made(runReport(source({ state: changed }), 'run-3')));
    expect(told).toContain(`Gone past by Ines Okafor, 2026-03-15 16:29: “${what}”`);
    expect(told).toContain('Reason given: “Bar certificate seen.”');
    expect(told).toMatch(/the clock of the computer moved 3600\s?s backwards/);
    expect(told).not.toContain('None on record');
  });

  it('tells all times in the zone of its issue', async () => {
    expect(text).toContain('2026-03-11 19:19, IO');
    const inUtc = textOf(await made(runReport(source({ now: '2026-04-02T09:30:00Z' }), 'run-2')));
    expect(inUtc).toContain('2026-03-11 18:19, IO');
    expect(inUtc).toContain('zone UTC');
  });

  it('says when the revision is no longer the one that was run', async () => {
    expect(text).not.toContain('was changed after the checklist');
    const stale = changedRun('run-2', (before) => ({ ...before, fingerprint: '0123456789abcdef' }));
    expect(textOf(await made(runReport(source({ state: stale }), 'run-2')))).toContain(
      'was changed after the checklist',
    );
  });

  it('has an identification of its own for each issue', async () => {
    const later = await made(runReport(source({ now: '2026-04-02T10:31:00+01:00' }), 'run-2'));
    expect(report.identification).toBe('SANDPIPER-TOOL-CAR-B-RUN2-20260402-1030');
    expect(later.identification).not.toBe(report.identification);
  });
});

describe('both reports', () => {
  it('cannot be made of a record that is not there', async () => {
    expect(await runReport(source(), 'nothing')).toMatchObject({
      ok: false,
      problem: { code: 'record.unknown' },
    });
    expect(await revisionReport(source(), 'nothing')).toMatchObject({
      ok: false,
      problem: { code: 'record.unknown' },
    });
  });

  it('need no character that the typeface lacks, and come out the same twice', async () => {
    requireTools('pdftotext');
    const fonts = readFonts();
    const options = { unknownCharacters: 'refuse' } as const;
    for (const report of [
      await made(runReport(source(), 'run-3')),
      await made(revisionReport(source(), 'revision-b')),
    ]) {
      const [one, two] = [await renderPdf(report, fonts, options), await renderPdf(report, fonts, options)];
      expect(one.ok).toBe(true);
      if (one.ok && two.ok) expect(Buffer.compare(one.value, two.value)).toBe(0);
    }
  });
});
