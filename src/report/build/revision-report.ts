/** The design record of one revision: what it is, what follows from it, by which equations, and what broke. */
import { assess, compareRevisions } from '../../margins/index.ts';
import { fingerprint, type Prototype, type Revision } from '../../notebook/index.ts';
import { bad, good, type Result } from '../../quantity/index.ts';
import type { Block, ReportDocument } from '../tree.ts';
import { calculationSection } from './calculation-section.ts';
import { headCautions, safetySection } from './caution-blocks.ts';
import { aboutSection, signatureSection } from './closing-section.ts';
import { failureSection } from './failure-section.ts';
import { inputSection } from './input-section.ts';
import { logSection } from './log-section.ts';
import { decisionRule, marginDetails, marginTable, noticeList } from './margin-section.ts';
import { ReportFrame, type ReportSource } from './report-source.ts';
import { vehicleSection } from './vehicle-section.ts';
import { heading, issueStamp, prose, slug } from './wording.ts';

/**
 * @param id  of the revision's record
 * Fails with `record.unknown` where the revision or its prototype is not in the notebook.
 */
export async function revisionReport(source: ReportSource, id: string): Promise<Result<ReportDocument>> {
  const { state } = source;
  const revision = state.revision[id];
  if (!revision) return bad('record.unknown', 'report', { kind: 'revision', id });
  const prototype = state.prototype[revision.prototype];
  if (!prototype) return bad('record.unknown', 'report', { kind: 'prototype', id: revision.prototype });
  const assessment = assess(prototype, revision);
  const frame = new ReportFrame(source.now);
  const failures = Object.values(state.failure).filter(
    (failure) => failure.revision === id || failure.correctedIn === id,
  );
  const entries = Object.values(state.entry).filter((entry) => entry.revision === id);
  const blocks: Block[] = [
    ...headCautions(revision, assessment),
    heading(1, 'What follows from it'),
    ...marginTable(assessment, frame),
    ...decisionRule,
    ...noticeList(assessment),
    ...safetySection(prototype, revision, assessment),
    ...changeSection(source, prototype, revision, frame),
    ...vehicleSection(prototype.name, revision, assessment, frame),
    ...(assessment.margins.length > 0 ? [heading(1, 'Margins'), ...marginDetails(assessment)] : []),
    ...failureSection(state, failures, frame),
    ...runSection(source, id, frame),
    ...(await logSection(entries, assessment, source, frame)),
    ...inputSection(assessment, frame),
    ...calculationSection(assessment, frame),
    ...aboutSection(),
    ...signatureSection([
      ...(revision.issuedBy
        ? [['Revision issued by', revision.issuedBy, frame.moment(revision.issuedAt)] as const]
        : []),
      ['Report prepared by', source.author, frame.moment(source.now)],
    ]),
  ];
  return good({
    title: `Design record of revision ${revision.letter}`,
    identification: `${slug(prototype.name, revision.prototype)}-${revision.letter}-${issueStamp(source.now, frame)}`,
    subject: `${prototype.name}, ${prototype.kind}`,
    author: source.author,
    issuedAt: source.now,
    paper: source.paper,
    titleBlock: titleBlock(source, prototype, revision, frame),
    blocks,
  });
}

function titleBlock(
  { state, author, now }: ReportSource,
  prototype: Prototype,
  revision: Revision,
  frame: ReportFrame,
): [string, string][] {
  const from = revision.from === undefined ? undefined : state.revision[revision.from];
  return [
    ['Prototype', prototype.name],
    ['Revision', `${revision.letter}, ${revision.status}`],
    ['Made from', from ? `revision ${from.letter}` : 'nothing earlier'],
    ['Revision begun', frame.moment(revision.createdAt)],
    ['Revision issued', revision.issuedAt ? frame.moment(revision.issuedAt) : 'not yet'],
    ['Issued by', revision.issuedBy ?? '–'],
    ['Report issued', `${frame.moment(now)} ${frame.zone}`],
    ['Prepared by', author],
    ['Fingerprint of the revision', fingerprint(revision)],
  ];
}

function changeSection(
  { state }: ReportSource,
  prototype: Prototype,
  revision: Revision,
  frame: ReportFrame,
): Block[] {
  const from = revision.from === undefined ? undefined : state.revision[revision.from];
  if (!from)
    return revision.reason === '' ? [] : [heading(1, 'Reason for the revision'), ...prose(revision.reason)];
  const { inputs, margins } = compareRevisions(prototype, from, revision);
  const turned = margins.filter((margin) => margin.turned);
  return [
    heading(1, `What is new since revision ${from.letter}`),
    ...prose(revision.reason),
    ...(inputs.length > 0
      ? ([
          {
            type: 'table',
            caption: frame.table('Changed inputs'),
            columns: [
              { title: 'Input', align: 'left', share: 3 },
              { title: `Revision ${from.letter}`, align: 'left', share: 1.5 },
              { title: `Revision ${revision.letter}`, align: 'left', share: 1.5 },
            ],
            rows: inputs.map(({ label, before, after }) => [label, before ?? '–', after ?? '–']),
          },
        ] satisfies Block[])
      : []),
    ...(turned.length > 0
      ? ([
          {
            type: 'list',
            ordered: false,
            items: turned.map(({ title, before, after }) => [
              `${title}: `,
              { strong: before?.verdict ?? 'not asked for' },
              ' before, ',
              { strong: after?.verdict ?? 'not asked for' },
              ' now',
            ]),
          },
        ] satisfies Block[])
      : []),
  ];
}

function runSection({ state }: ReportSource, revisionId: string, frame: ReportFrame): Block[] {
  const runs = Object.values(state.run)
    .filter((run) => run.revision === revisionId)
    .sort((a, b) => a.number - b.number);
  if (runs.length === 0) return [];
  return [
    heading(1, 'Runs'),
    {
      type: 'table',
      caption: frame.table('Runs of this revision'),
      columns: [
        { title: 'Run', align: 'right', share: 0.5 },
        { title: 'Test card', align: 'left', share: 1.9 },
        { title: 'Begun', align: 'left', share: 1.6 },
        { title: 'Outcome', align: 'left', share: 1 },
        { title: 'Summary', align: 'left', share: 3.4 },
      ],
      rows: runs.map((run) => [
        String(run.number),
        state.card[run.card]?.title ?? '–',
        frame.moment(run.startedAt),
        run.outcome ?? run.status,
        run.summary,
      ]),
    },
  ];
}
