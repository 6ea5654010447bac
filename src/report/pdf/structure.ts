/** The structure tree of a tagged PDF as data: what each piece of content is, in reading order. */

/** Standard structure types of ISO 32000-1 14.8.4 that a report uses. */
export type Role =
  | 'Document'
  | 'Sect'
  | 'Div'
  | 'H1'
  | 'H2'
  | 'H3'
  | 'P'
  | 'Caption'
  | 'L'
  | 'LI'
  | 'Lbl'
  | 'LBody'
  | 'Table'
  | 'THead'
  | 'TBody'
  | 'TR'
  | 'TH'
  | 'TD'
  | 'Figure'
  | 'Formula';

export interface ContentReference {
  readonly page: number;
  /** Number of the marked content on that page. */
  readonly mark: number;
}

export interface ElementAttributes {
  /** Read in place of what is drawn. */
  readonly alternate?: string;
  readonly scope?: 'Row' | 'Column';
  /** Lists: how the items are numbered. */
  readonly numbering?: 'Disc' | 'Decimal';
}

export class StructureElement {
  readonly children: (StructureElement | ContentReference)[] = [];
  /** Bounding box on its page, for figures and formulas: left, bottom, right, top. */
  box?: readonly [number, number, number, number];
  /** Whether that box stands in a line of text or on its own. */
  placement: 'Block' | 'Inline' = 'Block';

  constructor(
    readonly role: Role,
    readonly attributes: ElementAttributes = {},
  ) {}

  add(role: Role, attributes: ElementAttributes = {}): StructureElement {
    const child = new StructureElement(role, attributes);
    this.children.push(child);
    return child;
  }
}
