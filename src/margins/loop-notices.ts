/** What the control loop really does with what it reads. */
import { isKnown } from '../notebook/index.ts';
import { sentence } from '../quantity/index.ts';
import type { NoticeRule } from './notice-subject.ts';
import { situationOf } from './situation.ts';

/** A loop that loses the balance as it stands: the reason, where the margins can only say that there is none. */
export const unstableLoop: NoticeRule = ({ figures }) => {
  const result = figures.get('gain_margin_up')?.result;
  if (!result || result.ok || result.problem.code !== 'calculation.out-of-domain') return [];
  return [{ id: 'unstable-loop', group: 'loop', text: sentence(result.problem) }];
};

/**
 * What the gimbal gives a controller that takes it for the lean rate. A sprung gimbal tilts with the roll rate; one
 * that is held by friction tilts with the lean, and a free one moves at a rate that follows the lean.
 */
export const rateSource: NoticeRule = ({ revision }) => {
  const { rotor, gimbal, centred } = situationOf(revision);
  const source = revision.loop?.rateSource;
  const gain = revision.loop?.rateGain;
  if (!source || (isKnown(gain) && gain.si === 0)) return [];
  if (source !== 'gimbal tilt' && source !== 'gimbal rate') return [];
  if (!rotor || !gimbal) {
    const text = `The loop takes its lean rate from the ${source}, but the revision has no gimballed rotor to read it from.`;
    return [{ id: 'rate-source', group: 'loop', text }];
  }
  if (source === 'gimbal tilt' && centred) return [];
  const text =
    source === 'gimbal tilt'
      ? 'The loop takes the gimbal tilt for the lean rate, but without centring the tilt follows what the lean adds up to, ' +
        'not its rate: the rate gain acts on something else.'
      : 'The loop takes the gimbal rate for the lean rate, but the rate of the gimbal follows the lean: the rate gain acts ' +
        'on the lean.';
  return [{ id: 'rate-source', group: 'loop', text }];
};
