/** What a report is built from: the records, and what only the caller knows. */
import type { NotebookState } from '../../notebook/index.ts';
import type { ReportDocument } from '../tree.ts';

export interface ReportSource {
  readonly state: NotebookState;
  /** Who prepares the report. */
  readonly author: string;
  /** Moment of issue, RFC 3339. The clock is never read here. */
  readonly now: string;
  readonly paper: ReportDocument['paper'];
  /** Content of an attachment; undefined where it is missing. */
  readonly attachment: (sha256: string) => Promise<Uint8Array | undefined>;
}

const MOMENT = /^(\d{4}-\d\d-\d\d)(?:[Tt ](\d\d:\d\d)(?::\d\d(?:\.\d+)?)?(?:[Zz]|[+-]\d\d:\d\d)?)?$/;

/**
 * What the sections of one report share: figures and tables are counted through it, and all its times are told in one
 * zone, that of its issue, however they were recorded.
 */
export class ReportFrame {
  /** Offset of the report's times from UTC, `+01:00`. */
  readonly zone: string;
  private readonly minutes: number;
  private figures = 0;
  private tables = 0;

  constructor(now: string) {
    const offset = /[+-]\d\d:\d\d$/.exec(now)?.[0];
    this.zone = offset === undefined ? 'UTC' : offset.replace('-', '−');
    const [hours = 0, minutes = 0] = (offset ?? '+00:00').slice(1).split(':').map(Number);
    this.minutes = (offset?.startsWith('-') ? -1 : 1) * (60 * hours + minutes);
  }

  figure(caption: string): string {
    this.figures += 1;
    return `Figure ${this.figures}. ${caption}`;
  }

  table(caption: string): string {
    this.tables += 1;
    return `Table ${this.tables}. ${caption}`;
  }

  /** `2026-03-05 18:00`; a day alone, and text that is no moment, as they stand. */
  moment(text: string | undefined): string {
    const [day, time] = this.parts(text);
    return time === undefined ? day : `${day} ${time}`;
  }

  day(text: string | undefined): string {
    return this.parts(text)[0];
  }

  time(text: string): string {
    return this.parts(text)[1] ?? text;
  }

  private parts(text = ''): readonly [day: string, time: string | undefined] {
    const match = MOMENT.exec(text);
    if (!match) return [text, undefined];
    const [, day = '', time] = match;
    const instant = Date.parse(text);
    if (time === undefined || Number.isNaN(instant)) return [day, time];
    const local = new Date(instant + this.minutes * 60_000).toISOString();
    return [local.slice(0, 10), local.slice(11, 16)];
  }
}
