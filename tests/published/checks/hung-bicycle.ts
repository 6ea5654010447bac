/** A measured bicycle's frame and fork, hung from three points each: open data that several checks start from. */
import { through } from './through.ts';
import { radians } from './units.ts';

export const BROWSER = 'J. K. Moore, BicycleParameters, open data, Browser bicycle';

interface HangLine {
  /** ° of the part in its hanging, and m of the line from the wheel's centre, as the data give them. */
  readonly turn: number;
  readonly offset: number;
}

/**
 * Mean of the three points in which three plumb lines cross. The data give each line as z = −x tan β − a/cos β − r, z
 * downwards; upwards it passes r + a/cos β over the origin, at π/2 − β from the upright.
 */
function meanOfCrossings(
  lines: readonly HangLine[],
  at: (line: HangLine) => { height: number; angle: number },
  output: string,
): number {
  const pairs = [
    [0, 1],
    [0, 2],
    [1, 2],
  ] as const;
  const crossings = pairs.map(([i, j]) => {
    const [first, second] = [lines[i], lines[j]];
    if (!first || !second) throw new Error('three lines are needed');
    const [one, two] = [at(first), at(second)];
    return through(
      'weighing.hang-lines',
      output,
    )({
      firstForward: 0,
      firstHeight: one.height,
      firstAngle: one.angle,
      secondForward: 0,
      secondHeight: two.height,
      secondAngle: two.angle,
    });
  });
  return crossings.reduce((sum, value) => sum + value, 0) / crossings.length;
}

export const HEAD_ANGLE = radians(90 - 67.1);

/** Rolling radii from the way of 13 turns, 27.85 and 28.06 m. */
export const [REAR_RADIUS, FRONT_RADIUS] = [27.85 / 13 / (2 * Math.PI), 28.06 / 13 / (2 * Math.PI)];
const WHEELBASE = 1.121;

export const frameLines: readonly HangLine[] = [
  { turn: 3.4, offset: 0.098 },
  { turn: 138.7, offset: 0.169 },
  { turn: 229.8, offset: -0.294 },
];

const forkLines: readonly HangLine[] = [
  { turn: 346.7, offset: 0.474 },
  { turn: 28.1, offset: 0.383 },
  { turn: 287, offset: 0.215 },
];

export const frame = (output: string): number =>
  meanOfCrossings(
    frameLines,
    ({ turn, offset }) => {
      const beta = HEAD_ANGLE - radians(turn);
      return { height: offset / Math.cos(beta) + REAR_RADIUS, angle: Math.PI / 2 - beta };
    },
    output,
  );

/** The fork's lines count from the front wheel: b = w tan β − r_F − a/cos β. */
export const fork = (output: string): number =>
  meanOfCrossings(
    forkLines,
    ({ turn, offset }) => {
      const beta = HEAD_ANGLE - radians(turn);
      const height = offset / Math.cos(beta) + FRONT_RADIUS - WHEELBASE * Math.tan(beta);
      return { height, angle: Math.PI / 2 - beta };
    },
    output,
  );
