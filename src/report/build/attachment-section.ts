/** Pictures printed, other files listed with the hash that tells whether a copy is the same. */
import type { Attachment } from '../../notebook/index.ts';
import { pictureFault } from '../pdf/pictures.ts';
import type { Block, Inline } from '../tree.ts';
import type { ReportFrame, ReportSource } from './report-source.ts';

export async function attachmentBlocks(
  attachments: Readonly<Record<string, Attachment>>,
  source: ReportSource,
  frame: ReportFrame,
): Promise<Block[]> {
  const blocks: Block[] = [];
  const files: Inline[][] = [];
  for (const attachment of Object.values(attachments).sort((a, b) => a.order - b.order)) {
    const { name, caption, sha256, mediaType } = attachment;
    const words = caption === '' ? name : `${caption} (${name})`;
    if (mediaType !== 'image/png' && mediaType !== 'image/jpeg') {
      files.push(fileLine(attachment, ''));
      continue;
    }
    const bytes = await source.attachment(sha256);
    const fault = bytes ? pictureFault(bytes, mediaType) : 'its file is missing';
    if (!bytes || fault !== undefined) files.push(fileLine(attachment, `; not printed: ${fault ?? ''}`));
    else blocks.push({ type: 'picture', bytes, mediaType, caption: frame.figure(words) });
  }
  if (files.length > 0) blocks.push({ type: 'list', ordered: false, items: files });
  return blocks;
}

function fileLine({ name, caption, sha256, size }: Attachment, remark: string): Inline[] {
  return [
    `${name}${caption === '' ? '' : `, ${caption}`}: ${size} bytes, SHA-256 `,
    { code: sha256 },
    remark,
  ];
}
