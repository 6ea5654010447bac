/**
 * Results under the calculations, as part of the editor's state: block decorations have to come from there, and
 * between two evaluations they follow the text that is typed. What they say comes in by one effect.
 */
import {
  type EditorState,
  type Extension,
  MapMode,
  type Range,
  StateEffect,
  StateField,
  type Text,
} from '@codemirror/state';
import { Decoration, type DecorationSet, EditorView, WidgetType } from '@codemirror/view';
import { placeOf, type ShownLine, spoken } from '../calculation/shown-result.ts';

export interface Fault {
  readonly from: number;
  readonly to: number;
  readonly message: string;
}

/** A calculation at its place in the document, with its results. */
export interface PlacedResult {
  /** Range of the block, fences included. */
  readonly from: number;
  readonly to: number;
  readonly lines: readonly ShownLine[];
  readonly faults: readonly Fault[];
}

export const showResults = StateEffect.define<readonly PlacedResult[]>();

interface Placed {
  readonly from: number;
  readonly to: number;
  readonly widget: ResultWidget;
  readonly faults: readonly Fault[];
}

interface Results {
  readonly placed: readonly Placed[];
  readonly decorations: DecorationSet;
}

const field = StateField.define<Results>({
  create: () => ({ placed: [], decorations: Decoration.none }),
  update(results, transaction) {
    let { placed } = results;
    for (const effect of transaction.effects) {
      if (effect.is(showResults)) {
        placed = effect.value.map(({ lines, ...where }, index) => ({
          ...where,
          widget: new ResultWidget(lines, index + 1),
        }));
        return { placed, decorations: decorate(placed, transaction.state) };
      }
    }
    if (!transaction.docChanged || placed.length === 0) return results;
    // The results stay at the end of their block's last line until they are placed anew.
    placed = placed.flatMap(({ from, to, widget, faults }) => {
      const end = transaction.changes.mapPos(to, -1, MapMode.TrackDel);
      if (end === null) return [];
      const start = Math.min(transaction.changes.mapPos(from, 1), end);
      const shifted = faults.map((fault) => ({
        ...fault,
        from: transaction.changes.mapPos(fault.from, 1),
        to: transaction.changes.mapPos(fault.to, -1),
      }));
      return [{ from: start, to: end, widget, faults: shifted }];
    });
    return { placed, decorations: decorate(placed, transaction.state) };
  },
  provide: (self) => EditorView.decorations.from(self, ({ decorations }) => decorations),
});

export function results(): Extension {
  return field;
}

/** What is shown at this moment, in the order of the document. */
export function resultsShown(state: EditorState): readonly (readonly ShownLine[])[] {
  return state.field(field).placed.map(({ widget }) => widget.lines);
}

/** The bar at the side that holds a calculation and its results together. */
const sourceLine = Decoration.line({ class: 'calc-source', attributes: { spellcheck: 'false' } });

function decorate(placed: readonly Placed[], { doc }: EditorState): DecorationSet {
  const ranges: Range<Decoration>[] = [];
  for (const block of placed) {
    let line = doc.lineAt(Math.min(block.from, doc.length));
    while (line.to < block.to && line.number < doc.lines) {
      ranges.push(sourceLine.range(line.from));
      line = doc.line(line.number + 1);
    }
    ranges.push(sourceLine.range(line.from));
    if (block.widget.lines.length > 0) {
      ranges.push(Decoration.widget({ widget: block.widget, block: true, side: 1 }).range(line.to));
    }
    for (const fault of block.faults) {
      const [from, to] = visible(fault, doc);
      if (from < to) {
        const attributes = { title: fault.message };
        ranges.push(Decoration.mark({ class: 'calc-fault', attributes }).range(from, to));
      }
    }
  }
  return Decoration.set(ranges, true);
}

/** The characters to underline: what is missing at the end of a line is shown at its last character. */
function visible({ from, to }: Fault, doc: Text): readonly [from: number, to: number] {
  const line = doc.lineAt(Math.min(from, doc.length));
  const end = line.from + line.text.trimEnd().length;
  const start = Math.max(line.from, Math.min(from, end - 1));
  return [start, Math.min(Math.max(to, start + 1), end)];
}

const LINE_HEIGHT = 22; // close to what the style sheet gives; a wrong guess only moves the scroll bar
const PADDING = 10;

class ResultWidget extends WidgetType {
  readonly lines: readonly ShownLine[];
  private readonly number: number;

  constructor(lines: readonly ShownLine[], number: number) {
    super();
    this.lines = lines;
    this.number = number;
  }

  override eq(other: ResultWidget): boolean {
    return other.number === this.number && sameLines(other.lines, this.lines);
  }

  override get estimatedHeight(): number {
    return this.lines.length * LINE_HEIGHT + PADDING;
  }

  override toDOM(): HTMLElement {
    const element = document.createElement('div');
    element.className = 'calc-results';
    element.setAttribute('role', 'group');
    this.fill(element);
    return element;
  }

  override updateDOM(element: HTMLElement): boolean {
    this.fill(element);
    return true;
  }

  override ignoreEvent(): boolean {
    return true;
  }

  private fill(element: HTMLElement): void {
    element.setAttribute('aria-label', `Results of calculation ${this.number}`);
    element.replaceChildren(...this.lines.map(lineElement));
  }
}

function lineElement(line: ShownLine): HTMLElement {
  const element = document.createElement('div');
  element.className = line.kind === 'value' ? 'calc-line' : 'calc-line calc-problem';
  if (line.kind === 'value') {
    element.append(part('calc-name', line.name), part('calc-equals', ' = '), part('calc-value', line.value));
  } else {
    element.append(part('calc-place', placeOf(line)), part('calc-reason', `${line.reason} ${line.remedy}`));
  }
  return element;
}

function part(name: string, text: string): HTMLElement {
  const element = document.createElement('span');
  element.className = name;
  element.textContent = text;
  return element;
}

export function sameLines(a: readonly ShownLine[], b: readonly ShownLine[]): boolean {
  return a === b || (a.length === b.length && a.every((line, index) => isSame(line, b[index])));
}

function isSame(a: ShownLine, b: ShownLine | undefined): boolean {
  return b !== undefined && a.kind === b.kind && spoken(a) === spoken(b);
}
