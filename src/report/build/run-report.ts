/**
 * The report of one run: item, method, results beside predictions, checklist as signed, notes, what broke, and the
 * revision that was run: its margins, its data as entered, and each calculation behind them. Content after ISO/IEC 17025:2017 7.8.2, 7.8.3 and 7.8.6 as far as it applies to a
 * builder's own tests.
 */
import { clockNotices } from '../../checklist/index.ts';
import { assess } from '../../margins/index.ts';
import { fingerprint, type Prototype, type Revision, type Run, type TestCard } from '../../notebook/index.ts';
import { bad, good, type Result, sentence } from '../../quantity/index.ts';
import type { Block, ReportDocument } from '../tree.ts';
import { attachmentBlocks } from './attachment-section.ts';
import { calculationSection } from './calculation-section.ts';
import { headCautions, safetySection } from './caution-blocks.ts';
import { checklistSection, wasMet } from './checklist-section.ts';
import { aboutSection, signatureSection } from './closing-section.ts';
import { failureSection } from './failure-section.ts';
import { inputSection } from './input-section.ts';
import { decisionRule, marginScales, marginTable } from './margin-section.ts';
import { ReportFrame, type ReportSource } from './report-source.ts';
import { methodSection, resultSection } from './result-section.ts';
import { vehicleSection } from './vehicle-section.ts';
import { heading, issueStamp, slug } from './wording.ts';

/**
 * @param id  of the run's record
 * Fails with `record.unknown` where the run, its card, its revision or its prototype is not in the notebook.
 */
export async function runReport(source: ReportSource, id: string): Promise<Result<ReportDocument>> {
  const { state } = source;
  const run = state.run[id];
  if (!run) return bad('record.unknown', 'report', { kind: 'run', id });
  const revision = state.revision[run.revision];
  if (!revision) return bad('record.unknown', 'report', { kind: 'revision', id: run.revision });
  const prototype = state.prototype[run.prototype];
  if (!prototype) return bad('record.unknown', 'report', { kind: 'prototype', id: run.prototype });
  const card = state.card[run.card];
  if (!card) return bad('record.unknown', 'report', { kind: 'card', id: run.card });

  const assessment = assess(prototype, revision);
  const frame = new ReportFrame(source.now);
  const failures = Object.values(state.failure).filter(
    (failure) => failure.run === id || failure.verifiedBy === id,
  );
  const blocks: Block[] = [
    ...headCautions(revision, assessment),
    ...staleNotice(run, revision),
    ...resultSection(card, run, frame),
    ...departureSection(run, frame),
    ...noteSection(run, frame),
    ...(await pictureSection(run, source, frame)),
    ...safetySection(prototype, revision, assessment),
    ...methodSection(card, frame),
    ...checklistSection(run, frame),
    ...failureSection(state, failures, frame),
    heading(1, `Margins of revision ${revision.letter}`),
    ...marginTable(assessment, frame),
    ...marginScales(assessment),
    ...decisionRule,
    ...vehicleSection(prototype.name, revision, assessment, frame),
    ...inputSection(assessment, frame),
    ...calculationSection(assessment, frame),
    ...aboutSection(),
    ...signatureSection(signatures(run, source, frame)),
  ];
  return good({
    title: `Report of run ${run.number}: ${card.title}`,
    identification: `${slug(prototype.name, run.prototype)}-${revision.letter}-RUN${run.number}-${issueStamp(source.now, frame)}`,
    subject: `${prototype.name}, ${prototype.kind}, revision ${revision.letter}`,
    author: source.author,
    issuedAt: source.now,
    paper: source.paper,
    titleBlock: titleBlock(source, prototype, revision, run, card, frame),
    blocks,
  });
}

function titleBlock(
  { author, now }: ReportSource,
  prototype: Prototype,
  revision: Revision,
  run: Run,
  card: TestCard,
  frame: ReportFrame,
): [string, string][] {
  return [
    ['Item', `${prototype.name}, revision ${revision.letter}`],
    ['Run', String(run.number)],
    ['Outcome', run.outcome ?? run.status],
    ['Test card', `${card.number}: ${card.title}`],
    ['Begun', `${frame.moment(run.startedAt)}`],
    ['Finished', run.finishedAt ? frame.moment(run.finishedAt) : 'not yet'],
    ['Run by', run.startedBy],
    ['Report issued', `${frame.moment(now)} ${frame.zone}`],
    ['Prepared by', author],
    ['Fingerprint of the revision as run', run.fingerprint],
  ];
}

function staleNotice(run: Run, revision: Revision): Block[] {
  if (run.fingerprint === fingerprint(revision)) return [];
  return [
    {
      type: 'caution',
      signal: 'NOTICE',
      texts: [
        `Revision ${revision.letter} was changed after the checklist of this run was made (fingerprint ${run.fingerprint} then, ${fingerprint(revision)} now). The margins below are those of the revision as it is now.`,
      ],
    },
  ];
}

/** Additions to the method, departures from it, parts left out: what the record itself shows. */
function departureSection(run: Run, frame: ReportFrame): Block[] {
  const open = run.items.filter((item) => !run.answers[item.id]);
  const unmet = run.items.filter((item) => run.answers[item.id] && !wasMet(item, run.answers[item.id]));
  const lines: string[] = [];
  if (run.outcome === 'aborted' || run.status === 'aborted')
    lines.push('The run was aborted; see the summary and the notes.');
  if (run.status === 'void') lines.push('The run is void: the revision changed under its checklist.');
  if (!run.clearedAt) lines.push('The run was never cleared by its checklist.');
  if (open.length > 0)
    lines.push(`${counted(open.length)} of ${run.items.length} not answered: ${named(open)}.`);
  if (unmet.length > 0) lines.push(`${counted(unmet.length)} answered and not met: ${named(unmet)}.`);
  for (const { what, name, reason, at } of Object.values(run.overrides ?? {})) {
    lines.push(`Gone past by ${name}, ${frame.moment(at)}: “${what}” Reason given: “${reason}”`);
  }
  for (const notice of clockNotices(run)) lines.push(sentence(notice));
  return [
    heading(1, 'Departures from the method'),
    lines.length === 0
      ? { type: 'paragraph', content: ['None on record: every item of the checklist was answered and met.'] }
      : { type: 'list', ordered: false, items: lines.map((line) => [line]) },
  ];
}

function counted(count: number): string {
  return count === 1 ? '1 item of the checklist' : `${count} items of the checklist`;
}

const MOST_NAMED = 6;

function named(items: Run['items']): string {
  const names = items.slice(0, MOST_NAMED).map(({ text }) => `“${text.replace(/[.\s]+$/, '')}”`);
  return items.length > MOST_NAMED
    ? `${names.join('; ')}; and ${items.length - MOST_NAMED} more`
    : names.join('; ');
}

function noteSection(run: Run, frame: ReportFrame): Block[] {
  const notes = Object.values(run.notes).sort((a, b) => (a.at < b.at ? -1 : 1));
  if (notes.length === 0) return [];
  return [
    heading(1, 'Notes'),
    ...notes.map(
      ({ at, author, text }): Block => ({
        type: 'paragraph',
        content: [{ strong: `${frame.moment(at)}, ${author}. ` }, text],
      }),
    ),
  ];
}

async function pictureSection(run: Run, source: ReportSource, frame: ReportFrame): Promise<Block[]> {
  const blocks = await attachmentBlocks(run.attachments, source, frame);
  return blocks.length === 0 ? [] : [heading(1, 'Pictures and files'), ...blocks];
}

function signatures(
  run: Run,
  source: ReportSource,
  frame: ReportFrame,
): (readonly [string, string, string])[] {
  return [
    ['Run begun by', run.startedBy, frame.moment(run.startedAt)],
    ...(run.clearedBy ? [['Cleared by', run.clearedBy, frame.moment(run.clearedAt)] as const] : []),
    ...(run.signedBy ? [['Run signed by', run.signedBy, frame.moment(run.signedAt)] as const] : []),
    ['Report prepared by', source.author, `${frame.day(source.now)}`],
  ];
}
