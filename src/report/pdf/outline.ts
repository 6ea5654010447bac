/** The outline of a document from its headings in order: each hangs below the last one of a higher level. */

export interface OutlineEntry {
  readonly level: number;
  readonly text: string;
  readonly page: number;
  /** Distance from the top of the page, points. */
  readonly top: number;
}

export interface OutlineNode {
  readonly entry: OutlineEntry;
  readonly children: OutlineNode[];
}

export function outlineTree(entries: readonly OutlineEntry[]): OutlineNode[] {
  const roots: OutlineNode[] = [];
  const open: OutlineNode[] = [];
  for (const entry of entries) {
    const node: OutlineNode = { entry, children: [] };
    while (open.length > 0 && (open.at(-1)?.entry.level ?? 0) >= entry.level) open.pop();
    (open.at(-1)?.children ?? roots).push(node);
    open.push(node);
  }
  return roots;
}
