/**
 * Which calculation gives which figures, from which names, and when it applies. One row a figure family; a
 * calculation is added to the program's figures by adding a row to the list of its family. Nothing here computes.
 *
 * Where two rows give the same figure, their conditions exclude one another. A figure none of whose rows applies is
 * absent from the assessment.
 */
import { actuatorRows, loopFigures, loopRows, packRows } from './drive-wiring.ts';
import type { FigureSpec } from './figure.ts';
import { gimbalStopTime, gyroRows, rotorRows } from './rotor-wiring.ts';
import type { Situation } from './situation.ts';
import { ballastRows, heightsOfBallast, massRows } from './vehicle-wiring.ts';
import type { Row } from './wiring-row.ts';

export const wiring: readonly Row[] = [
  ...massRows,
  ...ballastRows,
  ...rotorRows,
  ...gyroRows,
  ...actuatorRows,
  ...packRows,
  ...loopRows,
];

/** Figures that are asked for before the hardware is described, and the choice that they then wait for. */
export const waiting: readonly {
  readonly figures: readonly FigureSpec[];
  readonly choice: (situation: Situation) => string | undefined;
}[] = [
  {
    figures: heightsOfBallast,
    choice: ({ drive }) => (drive === undefined ? 'ballast_drive' : undefined),
  },
  {
    figures: [gimbalStopTime],
    choice: ({ rotor, gimbal }) => (!rotor ? 'rotor' : !gimbal ? 'gimbal' : undefined),
  },
  {
    figures: loopFigures,
    choice: ({ loop, drive }) => (drive === undefined ? 'ballast_drive' : !loop ? 'loop' : undefined),
  },
];
