/** What a revision is made of, as far as it decides which equation applies: arm or slide, rotor, gimbal, spring. */
import { isKnown, type Revision } from '../notebook/index.ts';
import { type DriveFamily, driveFamily } from './facts.ts';

export interface Situation {
  readonly drive: DriveFamily | undefined;
  /** A rotor is described; without one the spin momentum is nought, not unknown. */
  readonly rotor: boolean;
  readonly gimbal: boolean;
  /** The gimbal has a centring stiffness that is not nought, or one that has still to be measured. */
  readonly centred: boolean;
  readonly actuator: boolean;
  readonly loop: boolean;
  readonly pack: boolean;
}

export function situationOf(revision: Revision): Situation {
  const centring = revision.gimbal?.centring;
  return {
    drive: driveFamily(revision),
    rotor: revision.rotor !== undefined,
    gimbal: revision.gimbal !== undefined,
    centred: centring !== undefined && !(isKnown(centring) && centring.si === 0),
    actuator: revision.actuator !== undefined,
    loop: revision.loop !== undefined,
    pack: revision.pack !== undefined,
  };
}

/** Every situation that a revision can be in: for checking the wiring as a whole. */
export function everySituation(): readonly Situation[] {
  const either = [false, true];
  const drives: readonly Situation['drive'][] = [undefined, 'arm', 'slide'];
  return drives.flatMap((drive) =>
    either.flatMap((rotor) =>
      either.flatMap((gimbal) =>
        either.flatMap((centred) =>
          centred && !gimbal
            ? []
            : either.map((rest) => ({
                drive,
                rotor,
                gimbal,
                centred,
                actuator: rest,
                loop: rest,
                pack: rest,
              })),
        ),
      ),
    ),
  );
}
