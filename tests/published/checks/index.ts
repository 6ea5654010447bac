/** Every table of checks of the mechanics against publications, in the order in which the page of checks prints them. */
import { ballastChecks } from './ballast.ts';
import { driveChecks } from './drive.ts';
import { fragmentChecks } from './fragments.ts';
import { gyroChecks } from './gyro.ts';
import { massChecks } from './mass.ts';
import { powerChecks } from './power.ts';
import type { MechanicsCheck } from './published-check.ts';
import { rotorChecks } from './rotor.ts';
import { rotorRunningChecks } from './rotor-running.ts';
import { structureChecks } from './structure.ts';
import { swingingChecks } from './swinging.ts';
import { turningChecks } from './turning.ts';
import { weighingChecks } from './weighing.ts';
import { whirlingChecks } from './whirling.ts';

export { isPublished, type MechanicsCheck, statuses } from './published-check.ts';
export { traced } from './through.ts';

export const checkTables: readonly { readonly title: string; readonly checks: readonly MechanicsCheck[] }[] =
  [
    { title: 'Masses and inertia', checks: massChecks },
    { title: 'Weighing and hanging', checks: weighingChecks },
    { title: 'Swinging', checks: swingingChecks },
    { title: 'Ballast', checks: ballastChecks },
    { title: 'Turns', checks: turningChecks },
    { title: 'Gyroscopes', checks: gyroChecks },
    { title: 'Rotors', checks: rotorChecks },
    { title: 'Running rotors', checks: rotorRunningChecks },
    { title: 'Whirling', checks: whirlingChecks },
    { title: 'Fragments', checks: fragmentChecks },
    { title: 'Drives', checks: driveChecks },
    { title: 'Supply', checks: powerChecks },
    { title: 'Structure', checks: structureChecks },
  ];
