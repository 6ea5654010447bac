/** Every table of checks of the mechanics against publications, in the order in which the page of checks prints them. */
import { ballastChecks } from './ballast.ts';
import { driveChecks } from './drive.ts';
import { gyroChecks } from './gyro.ts';
import { massChecks } from './mass.ts';
import { measuringChecks } from './measuring.ts';
import { powerChecks } from './power.ts';
import type { MechanicsCheck } from './published-check.ts';
import { rotorChecks } from './rotor.ts';
import { structureChecks } from './structure.ts';
import { turningChecks } from './turning.ts';

export { isPublished, type MechanicsCheck, statuses } from './published-check.ts';
export { traced } from './through.ts';

export const checkTables: readonly { readonly title: string; readonly checks: readonly MechanicsCheck[] }[] =
  [
    { title: 'Masses and inertia', checks: massChecks },
    { title: 'Weighing, hanging and swinging', checks: measuringChecks },
    { title: 'Ballast', checks: ballastChecks },
    { title: 'Turns', checks: turningChecks },
    { title: 'Gyroscopes', checks: gyroChecks },
    { title: 'Rotors', checks: rotorChecks },
    { title: 'Drives', checks: driveChecks },
    { title: 'Supply', checks: powerChecks },
    { title: 'Structure', checks: structureChecks },
  ];
