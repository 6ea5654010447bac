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
  /** End of the block, closing fence included. */
  readonly at: number;
  readonly lines: readonly ShownLine[];
  readonly faults: readonly Fault[];
}

export const showResults = StateEffect.define<readonly PlacedResult[]>();

interface Placed {
  readonly at: number;
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
        placed = effect.value.map(({ at, lines, faults }, index) => ({
          at,
          faults,
          widget: new ResultWidget(lines, index + 1),
        }));
        return { placed, decorations: decorate(placed, transaction.state) };
      }
    }
    if (!transaction.docChanged || placed.length === 0) return results;
    // The results stay at the end of their block's last line until they are placed anew.
    placed = placed.flatMap(({ at, widget, faults }) => {
      const moved = transaction.changes.mapPos(at, -1, MapMode.TrackDel);
      if (moved === null) return [];
      const shifted = faults.map((fault) => ({
        ...fault,
        from: transaction.changes.mapPos(fault.from, 1),
        to: transaction.changes.mapPos(fault.to, -1),
      }));
      return [{ at: moved, widget, faults: shifted }];
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

function decorate(placed: readonly Placed[], { doc }: EditorState): DecorationSet {
  const ranges: Range<Decoration>[] = [];
  for (const { at, widget, faults } of placed) {
    if (widget.lines.length > 0) {
      const end = doc.lineAt(Math.min(at, doc.length)).to;
      ranges.push(Decoration.widget({ widget, block: true, side: 1 }).range(end));
    }
    for (const { from, to, message } of faults) {
      if (from < to && to <= doc.length) {
        ranges.push(Decoration.mark({ class: 'calc-fault', attributes: { title: message } }).range(from, to));
      }
    }
  }
  return Decoration.set(ranges, true);
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
  element.className = `calc-line ${line.kind}`;
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
