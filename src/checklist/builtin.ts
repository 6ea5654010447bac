/**
 * The templates that come with the program, read once. They are bundled as data, so that the window, the command line
 * and the tests all have the same ones without touching a file.
 */
import benchSpin from '../../templates/cards/bench-spin.json' with { type: 'json' };
import captiveSpinUp from '../../templates/cards/captive-spin-up.json' with { type: 'json' };
import freeBalance from '../../templates/cards/free-balance.json' with { type: 'json' };
import abnormalEvents from '../../templates/checklists/abnormal-events.json' with { type: 'json' };
import afterRun from '../../templates/checklists/after-run.json' with { type: 'json' };
import balanceRun from '../../templates/checklists/balance-run.json' with { type: 'json' };
import benchWork from '../../templates/checklists/bench-work.json' with { type: 'json' };
import captiveRun from '../../templates/checklists/captive-run.json' with { type: 'json' };
import clearAndArm from '../../templates/checklists/clear-and-arm.json' with { type: 'json' };
import firstSpinUp from '../../templates/checklists/first-spin-up.json' with { type: 'json' };
import packInspection from '../../templates/checklists/pack-inspection.json' with { type: 'json' };
import { ProblemError, type Result } from '../quantity/index.ts';
import type { CardTemplate, ChecklistTemplate } from './template.ts';
import { readCardTemplate, readChecklistTemplate } from './templates.ts';

/** In the order in which a session goes through them. */
export const builtinChecklists: readonly ChecklistTemplate[] = [
  benchWork,
  packInspection,
  firstSpinUp,
  captiveRun,
  balanceRun,
  clearAndArm,
  afterRun,
  abnormalEvents,
].map((json) => sound(readChecklistTemplate(json)).template);

/** From the gentlest test to the boldest. */
export const builtinCards: readonly CardTemplate[] = [benchSpin, captiveSpinUp, freeBalance].map(
  (json) =>
    sound(
      readCardTemplate(
        json,
        builtinChecklists.map(({ id }) => id),
      ),
    ).template,
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
