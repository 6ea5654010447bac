/**
 * The demo notebook as journal entries. Cards, checklists and predictions come out of the same code as for
 * anybody's own prototype, so that the demo cannot say anything that the program would not.
 */
import {
  abort,
  answerItem,
  beginRun,
  beginWait,
  builtinCards,
  checklistsOf,
  clear,
  finish,
  generateCard,
  generateChecklist,
  issueCard,
  waitTime,
} from '../checklist/index.ts';
import { assess, fieldAt } from '../margins/index.ts';
import {
  apply,
  type Change,
  type ChecklistItem,
  create,
  emptyState,
  type JournalEntry,
  type Json,
  type KnownQuantity,
  type NotebookState,
  type Prototype,
  type Revision,
  type Run,
  set,
  type TestCard,
} from '../notebook/index.ts';
import { ProblemError, parseQuantity, type Result } from '../quantity/index.ts';
import type { Event, HoldRun, IssueCard, NewRevision, Story, TypedQuantity } from './demo-story.ts';

const PROTOTYPE = 'sandpiper';

export type DemoEntry = Omit<JournalEntry, 'seq'>;

export interface Attached {
  readonly sha256: string;
  readonly size: number;
}

/** @param attached  what the desk made of the story's files, by their name */
export function demoEntries(story: Story, attached: ReadonlyMap<string, Attached>): readonly DemoEntry[] {
  const teller = new Teller(story, attached);
  teller.begin();
  for (const event of story.events) teller.tell(event);
  return teller.entries;
}

class Teller {
  readonly entries: DemoEntry[] = [];
  private state: NotebookState = emptyState;
  private readonly story: Story;
  private readonly attached: ReadonlyMap<string, Attached>;

  constructor(story: Story, attached: ReadonlyMap<string, Attached>) {
    this.story = story;
    this.attached = attached;
  }

  begin(): void {
    const { at, notebook, prototype } = this.story;
    this.record(at, undefined, create('notebook', 'notebook', { name: notebook, createdAt: at }));
    const { requirements, ...rest } = prototype;
    const read = Object.fromEntries(
      Object.entries(requirements).map(([key, typed]) => [
        key,
        this.quantity('prototype', `requirements/${key}`, typed as Json),
      ]),
    );
    this.record(
      at,
      undefined,
      create('prototype', PROTOTYPE, {
        ...rest,
        createdAt: at,
        requirements: read as Prototype['requirements'],
      }),
    );
  }

  tell(event: Event): void {
    const { at, by } = event;
    switch (event.do) {
      case 'revision':
        this.revise(event);
        break;
      case 'issue':
        this.record(
          at,
          by,
          set('revision', revisionId(event.letter), {
            status: 'issued',
            issuedAt: at,
            issuedBy: by ?? this.story.author,
          }),
        );
        break;
      case 'entry': {
        const picture = event.picture && this.attached.get(event.picture.file);
        this.record(
          at,
          by,
          create('entry', `entry-${count(this.state.entry) + 1}`, {
            prototype: PROTOTYPE,
            revision: revisionId(event.letter),
            number: count(this.state.entry) + 1,
            title: event.title,
            at,
            author: by ?? this.story.author,
            text: event.text.join('\n'),
            attachments:
              event.picture && picture
                ? {
                    picture: {
                      ...picture,
                      name: event.picture.file,
                      mediaType: event.picture.mediaType,
                      caption: event.picture.caption,
                      order: 1,
                    },
                  }
                : {},
          }),
        );
        break;
      }
      case 'card':
        this.issueCard(event);
        break;
      case 'run':
        this.run(event);
        break;
      case 'failure':
        this.record(
          at,
          by,
          create('failure', event.id, {
            prototype: PROTOTYPE,
            revision: revisionId(event.letter),
            number: count(this.state.failure) + 1,
            at,
            author: by ?? this.story.author,
            ...event.report,
          }),
        );
        break;
      case 'failure action':
        this.record(
          at,
          by,
          set('failure', event.id, {
            status: event.status,
            ...(event.correctedIn ? { correctedIn: revisionId(event.correctedIn) } : {}),
            ...(event.verifiedBy ? { verifiedBy: event.verifiedBy } : {}),
          }),
        );
        break;
    }
  }

  private revise(event: NewRevision): void {
    const { at, by, letter, from, reason } = event;
    const id = revisionId(letter);
    const before = from ? this.state.revision[revisionId(from)] : undefined;
    const { issuedAt: _at, issuedBy: _by, ...carried } = before ?? { parts: {} };
    this.record(
      at,
      by,
      create('revision', id, {
        ...carried,
        prototype: PROTOTYPE,
        letter,
        reason,
        status: 'draft',
        createdAt: at,
        ...(from ? { from: revisionId(from) } : {}),
      }),
    );
    // Choices first: which unit a quantity is read in can depend on them.
    const settings = Object.entries(event.set);
    for (const quantities of [false, true]) {
      const chosen = settings.filter(([, value]) => (typedQuantity(value) !== undefined) === quantities);
      if (chosen.length === 0) continue;
      const values = chosen.map(([path, value]) => [path, this.quantity('revision', path, value, id)]);
      this.record(at, by, set('revision', id, Object.fromEntries(values)));
    }
  }

  private issueCard({ at, by, id, letter, template: templateId }: IssueCard): void {
    const template = builtinCards.find((each) => each.id === templateId);
    if (!template) throw new Error(`the demo names a card template “${templateId}” that is not there`);
    const subject = this.subject(letter);
    const { card } = generateCard(template, {
      ...subject,
      prototypeId: PROTOTYPE,
      revisionId: revisionId(letter),
      number: count(this.state.card) + 1,
      at,
    });
    this.record(at, by, create('card', id, card));
    this.record(at, by, value(issueCard(id, card, { ...subject, by: by ?? this.story.author, at })));
  }

  private run(event: HoldRun): void {
    const { at, by, id, people, brokenOff } = event;
    const card = this.state.card[event.card];
    const template = builtinCards.find((each) => each.id === card?.template);
    if (!card || !template) throw new Error(`the demo runs a card “${event.card}” that is not there`);
    const revision = this.state.revision[card.revision] as Revision;
    const { prototype, assessment } = this.subject(revision.letter);
    const items = generateChecklist(checklistsOf(template), prototype, revision, assessment);
    const begun = beginRun({
      cardId: event.card,
      card,
      revision,
      items,
      number: count(this.state.run) + 1,
      by: by ?? this.story.author,
      at,
    });
    this.record(at, by, create('run', id, value(begun)));

    const clock = minutesFrom(at);
    const now = (): Run => this.state.run[id] as Run;
    const stranger = Object.keys(event.answers).find((each) => items.every((item) => item.id !== each));
    if (stranger !== undefined)
      throw new Error(`the demo answers ${stranger}, which is not on the list of ${id}`);
    // What was read under way stands before making safe, whose wait rests on the coast-down.
    const firstAfter = items.findIndex(({ phase }) => phase === 'after');
    for (const [index, item] of items.entries()) {
      if (index === firstAfter) this.takeReadings(event, card, clock);
      if (brokenOff && item.id === brokenOff.before) {
        this.record(clock(), by, value(abort(id, now(), brokenOff.reason, people[0], clock())));
      }
      // Making safe is gone through after every run, whatever its end.
      if (now().status === 'aborted' && item.phase !== 'after') continue;
      if (item.phase !== 'before' && now().status === 'checklist') {
        this.record(clock(), by, value(clear(id, now(), revision, people[0], clock())));
      }
      const begun = item.kind === 'wait' ? this.waitOut(event, revision, item, clock) : undefined;
      const recordedAt = clock();
      const answeredAt = clock();
      const given = {
        ...this.given(item, event, answeredAt),
        ...(begun ? { clock: begun(answeredAt) } : {}),
      };
      this.record(recordedAt, by, value(answerItem(id, now(), revision, item.id, given)));
    }
    this.record(clock(), by, set('run', id, { summary: event.summary }));
    if (event.outcome !== 'aborted') {
      this.record(clock(), by, value(finish(id, now(), event.outcome, clock())));
    }
    const signedAt = clock();
    this.record(signedAt, by, set('run', id, { signedBy: by ?? this.story.author, signedAt }));
  }

  private takeReadings({ id, by, readings }: HoldRun, card: TestCard, clock: () => string): void {
    for (const [reading, typed] of Object.entries(readings)) {
      const asked = card.readings[reading];
      if (!asked) throw new Error(`the demo gives a reading ${reading}, which is not on the card`);
      this.record(
        clock(),
        by,
        set('run', id, { [`readings/${reading}`]: measured(typed, asked.unit, reading) }),
      );
    }
  }

  /** Starts a wait and lets the clock run until it is over; gives what the other clock, that only counts up, then reads. */
  private waitOut({ id, by, people }: HoldRun, revision: Revision, item: ChecklistItem, clock: () => string) {
    const begun = clock();
    const at = (moment: string) => ({
      session: 'the day of the run',
      reading: (Date.parse(moment) - Date.parse(begun)) / 1000,
    });
    const run = this.state.run[id] as Run;
    const start = { initials: people[0], at: begun, clock: at(begun) };
    this.record(begun, by, value(beginWait(id, run, revision, item.id, start)));
    const { seconds } = value(waitTime(run, item.id));
    while (at(clock()).reading < seconds);
    return at;
  }

  private given(item: ChecklistItem, { answers, people }: HoldRun, at: string) {
    const common = { at, initials: people[0], ...(item.kind === 'two-person' ? { second: people[1] } : {}) };
    const answer = answers[item.id];
    if (item.measured) {
      if (answer === undefined) throw new Error(`the demo gives no reading for ${item.id}`);
      return { ...common, reading: measured(answer, item.measured.unit, item.id) };
    }
    if (item.choices) {
      const choice = item.choices.find(({ text, stops }) =>
        answer === undefined ? !stops : text === answer,
      );
      if (!choice) throw new Error(`the demo gives no choice for ${item.id}`);
      return { ...common, choice: choice.text };
    }
    return common;
  }

  private subject(letter: string) {
    const prototype = this.state.prototype[PROTOTYPE] as Prototype;
    const revision = this.state.revision[revisionId(letter)] as Revision;
    return { prototype, revision, assessment: assess(prototype, revision) };
  }

  /** Puts what was typed into the form of the record; nested objects are walked, other values stay. */
  private quantity(kind: 'prototype' | 'revision', path: string, typed: Json, id?: string): Json {
    const written = typedQuantity(typed);
    if (written) {
      const held = id === undefined ? undefined : this.state.revision[id];
      const field = fieldAt(kind, path, held);
      if (!field) throw new Error(`the demo sets ${path}, which is no field`);
      const read = value(parseQuantity(written[0], field.display, path));
      return { typed: written[0], si: read.si, u: read.u ?? 0, basis: written[1] ?? 'measured' };
    }
    if (typeof typed !== 'object' || typed === null || Array.isArray(typed)) return typed;
    return Object.fromEntries(
      Object.entries(typed).map(([key, member]) => [
        key,
        member === undefined ? undefined : this.quantity(kind, `${path}/${key}`, member, id),
      ]),
    );
  }

  private record(at: string, by: string | undefined, change: Change): void {
    this.state = value(apply(this.state, change));
    this.entries.push({ at, by: by ?? this.story.author, change });
  }
}

function revisionId(letter: string): string {
  return `revision-${letter.toLowerCase()}`;
}

function count(records: Readonly<Record<string, unknown>>): number {
  return Object.keys(records).length;
}

/** A quantity as typed is a list in the story; nothing else there is. */
function typedQuantity(json: Json | undefined): TypedQuantity | undefined {
  return Array.isArray(json) && typeof json[0] === 'string' ? (json as unknown as TypedQuantity) : undefined;
}

function measured(typed: string, unit: string, place: string): KnownQuantity {
  const read = value(parseQuantity(typed, unit, place));
  return { typed, si: read.si, u: read.u ?? 0, basis: 'measured' };
}

/** Times of a run: half a minute from one answer to the next, on the clocks of the place where the story plays. */
function minutesFrom(start: string): () => string {
  const [local, offset] = [start.slice(0, 19), start.slice(19)];
  let seconds = 0;
  return () => {
    seconds += 30;
    return new Date(Date.parse(`${local}Z`) + seconds * 1000).toISOString().slice(0, 19) + offset;
  };
}

/** The story is ours: anything that cannot be done in it is a mistake in it. */
function value<T>(result: Result<T>): T {
  if (result.ok) return result.value;
  throw new ProblemError(result.problem);
}
