/** The safety messages at the head of a report, from the figures of the revision; none about what is not there. */
import type { Assessment } from '../../margins/index.ts';
import { formatValue } from '../../quantity/index.ts';
import type { Block } from '../tree.ts';

export function rotorCautions(assessment: Assessment): Block[] {
  const energy = assessment.figures.get('rotor_energy')?.result;
  const strength = assessment.margins.find(({ id }) => id === 'rotor-strength');
  if (!energy && !strength) return [];
  const stored = energy?.ok
    ? ` It stores ${formatValue(energy.value.value, 'J', energy.value.value / 10)}.`
    : '';
  if (strength?.verdict === 'fails') {
    return [
      {
        type: 'caution',
        signal: 'DANGER',
        text: `The rotor lacks the strength for the speed that it is judged at: do not spin it.${stored}`,
      },
    ];
  }
  const doubt =
    strength && strength.verdict !== 'holds'
      ? ` The verdict on its strength is “${strength.verdict}”: settle that before it is spun.`
      : '';
  return [
    {
      type: 'caution',
      signal: 'WARNING',
      text: `Keep out of the plane of the rotor while it turns; a fragment can kill.${stored} Protective equipment does not stop one.${doubt}`,
    },
  ];
}

export function draftNotice(letter: string): Block {
  return {
    type: 'caution',
    signal: 'NOTICE',
    text: `Revision ${letter} is a draft: what is reported here can still change.`,
  };
}
