/**
 * The templates that come with the program, read once. They are bundled as data, so that the window, the command line
 * and the tests all have the same ones without touching a file.
 */
import ballastDrive from '../../templates/cards/ballast-drive.json' with { type: 'json' };
import benchSpin from '../../templates/cards/bench-spin.json' with { type: 'json' };
import captiveBalance from '../../templates/cards/captive-balance.json' with { type: 'json' };
import captiveSpinUp from '../../templates/cards/captive-spin-up.json' with { type: 'json' };
import crossSlope from '../../templates/cards/cross-slope.json' with { type: 'json' };
import endurance from '../../templates/cards/endurance.json' with { type: 'json' };
import freeBalance from '../../templates/cards/free-balance.json' with { type: 'json' };
import freeTurning from '../../templates/cards/free-turning.json' with { type: 'json' };
import gimbalTime from '../../templates/cards/gimbal-time.json' with { type: 'json' };
import overspeedRun from '../../templates/cards/overspeed-run.json' with { type: 'json' };
import straightDrive from '../../templates/cards/straight-drive.json' with { type: 'json' };
import abnormalEvents from '../../templates/checklists/abnormal-events.json' with { type: 'json' };
import afterRun from '../../templates/checklists/after-run.json' with { type: 'json' };
import balanceRun from '../../templates/checklists/balance-run.json' with { type: 'json' };
import benchWork from '../../templates/checklists/bench-work.json' with { type: 'json' };
import captiveRun from '../../templates/checklists/captive-run.json' with { type: 'json' };
import chargingAndStorage from '../../templates/checklists/charging-and-storage.json' with { type: 'json' };
import clearAndArm from '../../templates/checklists/clear-and-arm.json' with { type: 'json' };
import driving from '../../templates/checklists/driving.json' with { type: 'json' };
import firstSpinUp from '../../templates/checklists/first-spin-up.json' with { type: 'json' };
import overspeedProof from '../../templates/checklists/overspeed-proof.json' with { type: 'json' };
import packInspection from '../../templates/checklists/pack-inspection.json' with { type: 'json' };
import turning from '../../templates/checklists/turning.json' with { type: 'json' };
import rotorAlone from '../../templates/ladders/rotor-alone.json' with { type: 'json' };
import shiftingBallast from '../../templates/ladders/shifting-ballast.json' with { type: 'json' };
import { ProblemError, type Result } from '../quantity/index.ts';
import { type Ladder, readLadder } from './ladder-template.ts';
import type { CardTemplate, ChecklistTemplate } from './template.ts';
import { readCardTemplate, readChecklistTemplate } from './templates.ts';

/** In the order in which a session goes through them. */
export const builtinChecklists: readonly ChecklistTemplate[] = [
  benchWork,
  chargingAndStorage,
  packInspection,
  firstSpinUp,
  overspeedProof,
  captiveRun,
  balanceRun,
  driving,
  turning,
  clearAndArm,
  afterRun,
  abnormalEvents,
].map((json) => sound(readChecklistTemplate(json)).template);

/** From the gentlest test to the boldest. */
export const builtinCards: readonly CardTemplate[] = [
  benchSpin,
  overspeedRun,
  ballastDrive,
  captiveSpinUp,
  gimbalTime,
  captiveBalance,
  freeBalance,
  crossSlope,
  endurance,
  straightDrive,
  freeTurning,
].map(
  (json) =>
    sound(
      readCardTemplate(
        json,
        builtinChecklists.map(({ id }) => id),
      ),
    ).template,
);

/** By the way in which the vehicle is held up; the first that is meant for it is taken. */
export const builtinLadders: readonly Ladder[] = [shiftingBallast, rotorAlone].map((json) =>
  sound(readLadder(json, builtinCards)),
);

/** Checklists named by a card, in its order; those that are only read are among them. */
export function checklistsOf(
  card: Pick<CardTemplate, 'checklists'>,
  among: readonly ChecklistTemplate[] = builtinChecklists,
): readonly ChecklistTemplate[] {
  return card.checklists.flatMap((id) => among.find((template) => template.id === id) ?? []);
}

/** A template of our own that does not read is a fault of the program. */
function sound<T>(result: Result<T>): T {
  if (result.ok) return result.value;
  throw new ProblemError(result.problem);
}
