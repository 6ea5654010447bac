/**
 * What acts on the vehicle from outside, and when: pushes, slopes, turns. Between two changes everything is constant, so
 * that no step ever runs across one.
 */
import {
  DomainError,
  requireBetween,
  requireFinite,
  requireNotNegative,
  requirePositive,
  turnAcceleration,
} from '../mechanics/index.ts';

interface Span {
  /** s. */
  readonly from: number;
  /** s; to the end of the run where left out. */
  readonly to?: number;
}

export type Disturbance =
  /** A blow: J, N·m·s about the roll axis, positive to the right. */
  | { readonly kind: 'impulse'; readonly at: number; readonly momentum: number }
  /** A steady push: T, N·m about the roll axis, positive to the right. */
  | ({ readonly kind: 'moment'; readonly moment: number } & Span)
  /** β, rad: the road falls to the right; the lean counts from square to the road. */
  | ({ readonly kind: 'cross slope'; readonly angle: number } & Span)
  /** v, m/s, on a radius r, m; to the left, which tips the vehicle to the right, or to the right. */
  | ({
      readonly kind: 'turn';
      readonly speed: number;
      readonly radius: number;
      readonly side: 'left' | 'right';
    } & Span);

/** What acts now. */
export interface Loads {
  /** T, N·m. */
  readonly moment: number;
  /** g cos β, m/s². */
  readonly downwards: number;
  /** g sin β + v²/r, m/s², positive to the right. */
  readonly sideways: number;
  /** ψ̇ = v/r, rad/s, positive to the left. */
  readonly yawRate: number;
}

export interface LoadCourse {
  readonly now: Loads;
  /** s, when something changes next; Infinity where nothing does any more. */
  next: number;
  readonly changes: readonly (Loads & { readonly time: number; readonly blow: number })[];
  upcoming: number;
}

/**
 * The course of the loads of a run, begun at time 0. Loads of one kind that overlap add up.
 *
 * @param gravity  g, m/s²
 * @throws DomainError  for a load that ends before it begins, or a figure outside its range
 */
export function loadCourse(disturbances: readonly Disturbance[], gravity: number): LoadCourse {
  requireNotNegative('acceleration of free fall', gravity, 'm/s²');
  disturbances.forEach(requireDisturbance);
  const times = [...new Set(disturbances.flatMap(timesOf))]
    .filter((time) => time < Number.POSITIVE_INFINITY)
    .sort((a, b) => a - b);
  const changes = times.map((time) => ({ time, ...loadsAt(disturbances, time, gravity) }));
  // numbers of one kind from the start, so that every run is compiled alike
  const now = { moment: Number.NaN, downwards: Number.NaN, sideways: Number.NaN, yawRate: Number.NaN };
  set(now, { moment: 0, downwards: gravity, sideways: 0, yawRate: 0 });
  return { now, next: times[0] ?? Number.POSITIVE_INFINITY, changes, upcoming: 0 };
}

/** Makes the change that is due, and gives the blow that comes with it, N·m·s. */
export function changeLoad(course: LoadCourse): number {
  const change = course.changes[course.upcoming];
  if (!change) return 0;
  course.upcoming++;
  set(course.now, change);
  course.next = course.changes[course.upcoming]?.time ?? Number.POSITIVE_INFINITY;
  return change.blow;
}

function set(now: { -readonly [K in keyof Loads]: Loads[K] }, loads: Loads): void {
  now.moment = loads.moment;
  now.downwards = loads.downwards;
  now.sideways = loads.sideways;
  now.yawRate = loads.yawRate;
}

function timesOf(load: Disturbance): number[] {
  return load.kind === 'impulse' ? [load.at] : [load.from, load.to ?? Number.POSITIVE_INFINITY];
}

function loadsAt(
  disturbances: readonly Disturbance[],
  time: number,
  gravity: number,
): Loads & { readonly blow: number } {
  let [moment, slope, turning, yawRate, blow] = [0, 0, 0, 0, 0];
  for (const load of disturbances) {
    if (load.kind === 'impulse') {
      if (load.at === time) blow += load.momentum;
      continue;
    }
    if (time < load.from || time >= (load.to ?? Number.POSITIVE_INFINITY)) continue;
    if (load.kind === 'moment') moment += load.moment;
    else if (load.kind === 'cross slope') slope += load.angle;
    else {
      const left = load.side === 'left' ? 1 : -1;
      turning += left * turnAcceleration(load);
      yawRate += (left * load.speed) / load.radius;
    }
  }
  return {
    moment,
    downwards: gravity * Math.cos(slope) - turning * Math.sin(slope),
    sideways: gravity * Math.sin(slope) + turning * Math.cos(slope),
    yawRate,
    blow,
  };
}

function requireDisturbance(load: Disturbance): void {
  if (load.kind === 'impulse') {
    requireNotNegative('time of the blow', load.at, 's');
    requireFinite('blow', load.momentum, 'N·m·s');
    return;
  }
  const what = load.kind === 'moment' ? 'push' : load.kind;
  requireNotNegative(`start of the ${what}`, load.from, 's');
  if (load.to !== undefined && !(load.to > load.from)) {
    throw new DomainError(
      `end of the ${what}`,
      load.to,
      `it has to come after its start, ${load.from} s`,
      's',
    );
  }
  if (load.kind === 'moment') requireFinite('push', load.moment, 'N·m');
  else if (load.kind === 'cross slope') {
    requireBetween('cross slope', load.angle, -Math.PI / 4, Math.PI / 4, 'rad');
  } else {
    requirePositive('speed in the turn', load.speed, 'm/s');
    requirePositive('radius of the turn', load.radius, 'm');
  }
}
