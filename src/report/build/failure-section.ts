/** What broke, why, and what was done about it. */
import { riskOf, severities } from '../../checklist/index.ts';
import type { FailureReport, NotebookState } from '../../notebook/index.ts';
import type { Block } from '../tree.ts';
import type { ReportFrame } from './report-source.ts';
import { heading, prose } from './wording.ts';

export function failureSection(
  state: NotebookState,
  failures: readonly FailureReport[],
  frame: ReportFrame,
): Block[] {
  if (failures.length === 0) return [];
  return [
    heading(1, 'Failures'),
    ...failures
      .toSorted((a, b) => a.number - b.number)
      .flatMap((failure) => failureBlocks(state, failure, frame)),
  ];
}

function failureBlocks(state: NotebookState, failure: FailureReport, frame: ReportFrame): Block[] {
  const { severity, probability } = failure;
  const revision = state.revision[failure.revision];
  const part = failure.part === undefined ? undefined : revision?.parts[failure.part]?.name;
  const corrected = failure.correctedIn === undefined ? undefined : state.revision[failure.correctedIn];
  const verified = failure.verifiedBy === undefined ? undefined : state.run[failure.verifiedBy];
  const run = failure.run === undefined ? undefined : state.run[failure.run];
  const facts: [string, string][] = [
    ['Status', failure.status],
    ['Reported', `${frame.moment(failure.at)} by ${failure.author}`],
    ['On', [`revision ${revision?.letter ?? '?'}`, run && `run ${run.number}`].filter(Boolean).join(', ')],
    ...(part ? [['Part', part] as [string, string]] : []),
    [
      'Risk before correction',
      `${riskOf(severity, probability)}: severity ${severity} (${severities[severity].name.toLowerCase()}), probability ${probability}`,
    ],
    ['Corrected in', corrected ? `revision ${corrected.letter}` : 'not yet'],
    ['Verified by', verified ? `run ${verified.number}` : 'not yet'],
  ];
  const told: [string, string][] = [
    ['Observed', failure.observed],
    ['When in the run', failure.moment],
    ['Effect', failure.effect],
    ['Evidence', failure.evidence],
    ['Corrective action', failure.correctiveAction],
  ];
  return [
    heading(2, `Failure ${failure.number}: ${failure.title}`),
    {
      type: 'list',
      ordered: false,
      items: facts.map(([label, value]) => [{ strong: `${label}: ` }, value]),
    },
    ...told.flatMap(([label, text]) =>
      prose(text).map(
        (block, index): Block =>
          block.type === 'paragraph' && index === 0
            ? { ...block, content: [{ strong: `${label}. ` }, ...block.content] }
            : block,
      ),
    ),
    ...(failure.causes.length > 0
      ? ([
          { type: 'paragraph', content: [{ strong: 'Why, each asked of the one before:' }] },
          { type: 'list', ordered: true, items: failure.causes.map((cause) => [cause]) },
        ] satisfies Block[])
      : []),
  ];
}
