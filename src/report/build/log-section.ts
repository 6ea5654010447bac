/** The notebook's entries on a revision, with their calculations and pictures. */
import { type Assessment, scopeOf } from '../../margins/index.ts';
import type { LogEntry } from '../../notebook/index.ts';
import type { Block } from '../tree.ts';
import { attachmentBlocks } from './attachment-section.ts';
import { markdownBlocks } from './markdown-blocks.ts';
import type { ReportFrame, ReportSource } from './report-source.ts';
import { heading } from './wording.ts';

export async function logSection(
  entries: readonly LogEntry[],
  assessment: Assessment,
  source: ReportSource,
  frame: ReportFrame,
): Promise<Block[]> {
  if (entries.length === 0) return [];
  const scope = scopeOf(assessment);
  const blocks: Block[] = [heading(1, 'Log')];
  for (const entry of entries.toSorted((a, b) => a.number - b.number)) {
    blocks.push(
      heading(2, `${entry.number}. ${entry.title}`),
      { type: 'paragraph', content: [{ emphasis: `${frame.moment(entry.at)}, ${entry.author}` }] },
      ...markdownBlocks(entry.text, scope),
      ...(await attachmentBlocks(entry.attachments, source, frame)),
    );
  }
  return blocks;
}
