/**
 * Keeps the results of an editor up to date: after each change of the text or of the figures in scope it asks for
 * the calculations of the whole text, one request at a time, and places the answer where the blocks are by then.
 */
import { type ChangeDesc, ChangeSet, type Extension, Facet, Transaction } from '@codemirror/state';
import { EditorView, type PluginValue, ViewPlugin, type ViewUpdate } from '@codemirror/view';
import { type CalcBlock, rangeInText } from '../calculation/calc-blocks.ts';
import type { Calculate, EvaluatedBlock, Figures } from '../calculation/evaluate-entry.ts';
import { type ShownLine, spoken } from '../calculation/shown-result.ts';
import { calcBlocksOf } from './calc-at-cursor.ts';
import { type PlacedResult, sameLines, showResults } from './results.ts';

export interface CalculationContext {
  readonly figures: Figures;
  readonly calculate: Calculate;
}

/** Replaced by reconfiguration when the figures change. */
export const calculationContext = Facet.define<CalculationContext, CalculationContext | undefined>({
  combine: (values) => values[0],
});

const SETTLE = 50; // ms of quiet before asking
const ANNOUNCE = 1500; // ms of quiet before a screen reader is told

class Calculating implements PluginValue {
  private readonly view: EditorView;
  private timer: ReturnType<typeof setTimeout> | undefined;
  private speaking: ReturnType<typeof setTimeout> | undefined;
  private asking = false;
  private again = false;
  private gone = false;
  private typed = false;
  /** What a screen reader knows: what stood there at opening, then what was last announced. */
  private told: readonly (readonly ShownLine[])[] = [];
  /** What happened to the text since the request that is under way. */
  private since: ChangeDesc | undefined;

  constructor(view: EditorView) {
    this.view = view;
    this.schedule();
  }

  update(update: ViewUpdate): void {
    if (update.docChanged) {
      this.typed = true;
      this.since = this.since?.composeDesc(update.changes.desc);
    }
    const scoped = update.startState.facet(calculationContext) !== update.state.facet(calculationContext);
    if (update.docChanged || scoped) this.schedule();
  }

  destroy(): void {
    this.gone = true;
    clearTimeout(this.timer);
    clearTimeout(this.speaking);
  }

  private schedule(): void {
    if (this.asking) {
      this.again = true;
      return;
    }
    clearTimeout(this.timer);
    this.timer = setTimeout(() => void this.ask(), SETTLE);
  }

  private async ask(): Promise<void> {
    const { state } = this.view;
    const context = state.facet(calculationContext);
    if (!context) return;
    const blocks = calcBlocksOf(state);
    this.asking = true;
    this.since = ChangeSet.empty(state.doc.length).desc;
    const codes = blocks.map(({ code }) => code);
    const evaluated = await context.calculate(codes, context.figures).catch((error: unknown) => {
      this.asking = false;
      throw error;
    });
    this.asking = false;
    if (this.gone) return;
    const { since } = this;
    this.since = undefined;
    if (since) this.show(blocks, evaluated, since);
    if (this.again) {
      this.again = false;
      this.schedule();
    }
  }

  private show(blocks: readonly CalcBlock[], evaluated: readonly EvaluatedBlock[], since: ChangeDesc): void {
    const placed = blocks.map((block, index) => placedAt(block, evaluated[index]?.lines ?? [], since));
    this.view.dispatch({
      effects: showResults.of(placed),
      annotations: Transaction.addToHistory.of(false),
    });
    const lines = placed.map((result) => result.lines);
    if (this.typed) this.announce(lines);
    else this.told = lines; // opening an entry is no news
  }

  private announce(shown: readonly (readonly ShownLine[])[]): void {
    clearTimeout(this.speaking);
    const news = shown.filter((lines) => !this.told.some((told) => sameLines(told, lines)));
    if (news.length === 0) return;
    this.speaking = setTimeout(() => {
      this.told = shown;
      this.view.dispatch({ effects: EditorView.announce.of(announcement(news.flat())) });
    }, ANNOUNCE);
  }
}

function placedAt(block: CalcBlock, lines: EvaluatedBlock['lines'], since: ChangeDesc): PlacedResult {
  const faults = lines.flatMap((line) => {
    if (line.kind !== 'problem' || !line.range) return [];
    const [from, to] = rangeInText(block, ...line.range);
    return [{ from: since.mapPos(from, 1), to: since.mapPos(to, -1), message: spoken(line) }];
  });
  return { from: since.mapPos(block.from, 1), to: since.mapPos(block.to, -1), lines, faults };
}

const LINES_SPOKEN = 4;

function announcement(lines: readonly ShownLine[]): string {
  const more = lines.length - LINES_SPOKEN;
  return [...lines.slice(0, LINES_SPOKEN).map(spoken), ...(more > 0 ? [`and ${more} more`] : [])].join('; ');
}

export function calculating(): Extension {
  return ViewPlugin.fromClass(Calculating);
}
