/** The form of `templates/demo/story.json`: what people typed and did, in order. */
import type { FailureReport, Json } from '../notebook/index.ts';

/** A quantity as typed, and how it was got (measured, where nothing is said). */
export type TypedQuantity = readonly [typed: string, basis?: string];

interface Happening {
  /** RFC 3339. */
  readonly at: string;
  /** The author of the story where nobody else is named. */
  readonly by?: string;
}

export interface NewRevision extends Happening {
  readonly do: 'revision';
  readonly letter: string;
  /** Letter of the revision that it is made from. */
  readonly from?: string;
  readonly reason: string;
  /** Paths of the revision's record → what is set there; quantities as typed. */
  readonly set: Readonly<Record<string, Json>>;
}

export interface IssueRevision extends Happening {
  readonly do: 'issue';
  readonly letter: string;
}

export interface WriteEntry extends Happening {
  readonly do: 'entry';
  readonly letter: string;
  readonly title: string;
  /** Lines of Markdown. */
  readonly text: readonly string[];
  /** A file beside the story. */
  readonly picture?: { readonly file: string; readonly mediaType: string; readonly caption: string };
}

/** A card made from a template and issued at once. */
export interface IssueCard extends Happening {
  readonly do: 'card';
  readonly id: string;
  readonly letter: string;
  readonly template: string;
}

export interface HoldRun extends Happening {
  readonly do: 'run';
  readonly id: string;
  readonly card: string;
  /** Initials of the two people. */
  readonly people: readonly [string, string];
  /** Items of the checklist → the reading, or the choice; ticks and holds are met. */
  readonly answers: Readonly<Record<string, string>>;
  /** The item before which it was broken off, and why; making safe follows. Else it went to its end. */
  readonly brokenOff?: { readonly before: string; readonly reason: string };
  readonly outcome: 'passed' | 'failed' | 'aborted';
  readonly readings: Readonly<Record<string, string>>;
  readonly summary: string;
}

export interface ReportFailure extends Happening {
  readonly do: 'failure';
  readonly id: string;
  readonly letter: string;
  readonly report: Pick<FailureReport, 'title' | 'severity' | 'probability'> &
    Partial<Omit<FailureReport, 'prototype' | 'revision' | 'number' | 'at' | 'author'>>;
}

export interface CloseFailure extends Happening {
  readonly do: 'failure action';
  readonly id: string;
  readonly correctedIn?: string;
  readonly verifiedBy?: string;
  readonly status: FailureReport['status'];
}

export type Event =
  | NewRevision
  | IssueRevision
  | WriteEntry
  | IssueCard
  | HoldRun
  | ReportFailure
  | CloseFailure;

export interface Story {
  readonly author: string;
  readonly at: string;
  readonly notebook: string;
  readonly prototype: {
    readonly name: string;
    readonly kind: 'inline two-wheeler';
    readonly description: string;
    readonly requirements: Readonly<Record<string, TypedQuantity>>;
  };
  readonly events: readonly Event[];
}
