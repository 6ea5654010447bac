/** What rotor and gimbal do that a builder may not expect, in words with numbers. */
import { neutralModeText } from '../control/index.ts';
import { isKnown, type Revision } from '../notebook/index.ts';
import { formatValue } from '../quantity/index.ts';
import { disagreement } from './mass-notices.ts';
import { inWords, knownFigure, knownValues, type NoticeRule, outputOf } from './notice-subject.ts';
import { situationOf } from './situation.ts';

/** Inertia and spin momentum follow the sections; a scale tells whether these are the rotor that was cut. */
export const rotorMass: NoticeRule = (subject) => {
  const weighed = knownFigure(subject, 'rotor_weighed_mass');
  const computed = knownFigure(subject, 'rotor_mass');
  const found = weighed && computed && disagreement(computed, weighed);
  if (!found) return [];
  const percent = formatValue(Math.abs(found.difference) / weighed.value, '%');
  const text =
    `The rotor weighs ${inWords(subject, 'rotor_weighed_mass')}; from the dimensions of its sections and its density it ` +
    `would weigh ${inWords(subject, 'rotor_mass')}, ${percent} ${found.difference > 0 ? 'more' : 'less'}. Inertia, spin ` +
    'momentum and energy follow the sections: check their dimensions and the density.';
  return [{ id: 'rotor-mass', group: 'rotor', text }];
};

export const judgedSpeed: NoticeRule = (subject) => {
  const { revision } = subject;
  if (!revision.rotor || !knownFigure(subject, 'judged_speed')) return [];
  const values = knownValues(subject, ['rotor_speed', 'runaway_speed']);
  if (!values) {
    const text =
      'The speed that the motor could drive the rotor to at full charge is not known (speed constant or number of cells ' +
      'missing): its stress is judged at the largest working speed times the overspeed factor.';
    return [{ id: 'judged-speed', group: 'rotor', text }];
  }
  if (values.rotor_speed <= values.runaway_speed) return [];
  const text =
    `The largest working speed, ${inWords(subject, 'rotor_speed')}, is above the ${inWords(subject, 'runaway_speed')} ` +
    'that the motor can reach at full charge.';
  return [{ id: 'judged-speed', group: 'rotor', text }];
};

/** All equations here have the rotor axis upright; a body that lies says otherwise. */
export const spinAxis: NoticeRule = ({ parts }) => {
  const rotor = parts.find(({ row }) => row.role === 'rotor');
  const body = rotor?.row.body;
  if (!rotor || (body?.shape !== 'cylinder' && body?.shape !== 'tube') || body.axis === 'z') return [];
  const effect =
    body.axis === 'x'
      ? 'along the roll axis, where its spin does nothing against roll'
      : 'across the vehicle, where its spin resists yaw and not roll in this gimbal';
  const text = `The body of ${rotor.row.name} lies ${effect}. The figures of the gimbal hold for an upright axis.`;
  return [{ id: 'spin-axis', group: 'rotor', text }];
};

/** A spring pushes the gimbal, the gimbal pushes the vehicle over. */
export const centringSpring: NoticeRule = (subject) => {
  const { revision } = subject;
  const centring = revision.gimbal?.centring;
  const values = knownValues(subject, [
    'spin_momentum',
    'toppling_stiffness',
    'gimbal_inertia',
    'gimbal_friction',
    'slow_toppling_time',
  ]);
  if (!isKnown(centring) || centring.si === 0 || !values) return [];
  const stiffness = inWords(subject, 'gimbal_centring');
  const time = inWords(subject, 'slow_toppling_time');
  if (centring.si < 0) {
    const text =
      `With its top-heavy gimbal (${stiffness}) the vehicle does not topple slowly to one side: it swings, growing with ` +
      `a time constant of ${time}.`;
    return [{ id: 'centring-spring', group: 'gimbal', text }];
  }
  const free = outputOf('gyro.slow-toppling', 'timeConstant', {
    spinMomentum: values.spin_momentum,
    stiffness: values.toppling_stiffness,
    gimbalInertia: values.gimbal_inertia,
    gimbalFriction: values.gimbal_friction,
  });
  const comparison =
    free === undefined || free <= values.slow_toppling_time
      ? ''
      : `; with a free gimbal it would take ${formatValue(free, 's')}`;
  const text =
    `The centring stiffness of ${stiffness} spends the time that the rotor buys: the lean grows with a time constant of ` +
    `${time}${comparison}.`;
  return [{ id: 'centring-spring', group: 'gimbal', text }];
};

/** A free gimbal keeps what the ballast cannot move: I_g α̇ − H φ + c α, and without friction the tilt itself. */
export const neutralGimbal: NoticeRule = ({ revision }) => {
  const { rotor, gimbal, centred } = situationOf(revision);
  if (!rotor || !gimbal || centred) return [];
  const frictionless = isKnown(revision.gimbal?.friction) && revision.gimbal.friction.si === 0;
  const text = neutralModeText[frictionless && !readsGimbal(revision) ? 'gimbal tilt' : 'gimbal offset'];
  return [{ id: 'neutral-gimbal', group: 'gimbal', text }];
};

function readsGimbal({ loop }: Revision): boolean {
  const gain = loop?.gimbalGain;
  return (
    (isKnown(gain) && gain.si !== 0) ||
    loop?.rateSource === 'gimbal tilt' ||
    loop?.rateSource === 'gimbal rate'
  );
}

/** Below this the gimbal damps rather than holds, and the time constant is no longer to be trusted. */
const LEAST_TIME_GAIN = 3;

export const weakRotor: NoticeRule = (subject) => {
  const gain = knownFigure(subject, 'rotor_time_gain');
  if (!gain || gain.value >= LEAST_TIME_GAIN) return [];
  const text =
    `With this spin momentum and gimbal friction the fall takes only ${formatValue(gain.value, '1')} times as long as without ` +
    'the rotor: the gimbal damps, it does not hold. More momentum or less friction is needed.';
  return [{ id: 'weak-rotor', group: 'gimbal', text }];
};

/** Kelvin, Tait and Chetaev: what spin alone holds up, friction lets fall. */
export const rotorAlone: NoticeRule = ({ revision }) => {
  const { rotor, gimbal, drive } = situationOf(revision);
  if (!rotor || !gimbal || drive !== undefined) return [];
  const text =
    'A rotor in a passive gimbal does not hold the vehicle up by itself: the friction in the gimbal lets it topple, only ' +
    'more slowly. Something has to move against the lean.';
  return [{ id: 'rotor-alone', group: 'gimbal', text }];
};
