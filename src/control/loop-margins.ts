/** The registered calculation of the balance loop's margins: plain figures in, margins out. */
import { type Calculation, calculation, DomainError } from '../mechanics/index.ts';
import type { BalanceController } from './balance-loop.ts';
import { type BalanceLoop, balanceLoop, rateSourceOfCode } from './balance-loop.ts';
import type { BalanceHardware } from './linear-plant.ts';
import { loopLimitCalculations } from './loop-limits.ts';
import { type MarginSlopes, marginSlopes } from './margin-slopes.ts';
import { loopMargins, type StableLoop } from './margins.ts';

/** The hardware and the controller in one flat record, the rate source by its code number. */
export interface LoopFigures extends BalanceHardware, Omit<BalanceController, 'rateSource'> {
  /** 0 rate gyro, 1 difference of angle, 2 gimbal tilt, 3 gimbal rate. */
  readonly rateSource: number;
}

export function loopOf(figures: LoopFigures): BalanceLoop {
  const rateSource = rateSourceOfCode(figures.rateSource);
  return balanceLoop(figures, { ...figures, rateSource });
}

function stableMargins(loop: BalanceLoop): StableLoop {
  const margins = loopMargins(loop);
  if (margins.stable) return margins;
  throw new DomainError(
    'spectral radius of the balance loop',
    margins.spectralRadius,
    'margins need a loop that is stable as it stands, with a spectral radius below 1: other gains, less delay or a faster actuator',
  );
}

interface Judged {
  readonly loop: BalanceLoop;
  readonly margins: StableLoop;
}

let last: (Judged & { readonly figures: string }) | undefined;

/** Margins and their slopes are asked for the same figures one after the other: the loop is judged once for both. */
function judged(figures: LoopFigures): Judged {
  const written = Object.entries(figures).join(';');
  if (last?.figures === written) return last;
  const loop = loopOf(figures);
  last = { figures: written, loop, margins: stableMargins(loop) };
  return last;
}

export const loopMarginsCalculation: Calculation = calculation({
  id: 'loop.margins',
  title: 'Margins of the balance loop',
  equation: String.raw`1 + \kappa\, L\!\left(e^{j\omega T_s};\, \tau + \delta\right) = 0, \qquad \kappa_{\downarrow} < 1 < \kappa_{\uparrow} \;(\delta = 0), \qquad \delta_{\max} = \min \delta \;(\kappa = 1), \qquad M_s = \max_{\omega} \frac{1}{\left|1 + L\right|}`,
  inputs: {
    firstMoment: {
      symbol: 'M',
      unit: 'kg·m',
      meaning: 'first moment about the ground line, ballast included',
    },
    rollInertia: { symbol: 'I', unit: 'kg·m²', meaning: 'roll inertia about the roll axis, ballast centred' },
    ballastMass: { symbol: 'm_b', unit: 'kg', meaning: 'ballast mass' },
    ballastHeight: { symbol: 'z_b', unit: 'm', meaning: 'ballast height above the ground line, centred' },
    commandToOffset: {
      symbol: 'L',
      unit: 'm',
      meaning: 'ballast offset by unit of command: the arm length for an arm, 1 for a slide',
      default: 1,
    },
    spinMomentum: {
      symbol: 'H',
      unit: 'N·m·s',
      meaning: 'spin momentum, 0 without a rotor in a gimbal',
      default: 0,
    },
    gimbalInertia: {
      symbol: 'I_g',
      unit: 'kg·m²',
      meaning: 'inertia of gimbal and rotor about the tilt axis',
      default: 0,
    },
    gimbalFriction: { symbol: 'c', unit: 'N·m·s/rad', meaning: 'viscous friction of the gimbal', default: 0 },
    gimbalCentring: {
      symbol: 'k',
      unit: 'N·m/rad',
      meaning: 'centring stiffness of the gimbal, negative where it is top-heavy',
      default: 0,
    },
    naturalFrequency: {
      symbol: String.raw`\omega_n`,
      unit: 'rad/s',
      meaning: 'natural frequency of the actuator',
    },
    dampingRatio: { symbol: String.raw`\zeta`, unit: '1', meaning: 'damping ratio of the actuator' },
    sensorLag: { symbol: String.raw`\tau_s`, unit: 's', meaning: 'lag of the lean and rate sensors' },
    sampleTime: { symbol: 'T_s', unit: 's', meaning: 'sample time of the controller' },
    delay: {
      symbol: String.raw`\tau`,
      unit: 's',
      meaning: 'delay from reading the sensors to the command reaching the actuator',
    },
    leanGain: {
      symbol: 'K_p',
      unit: '1',
      meaning: 'command by radian of lean (rad for an arm, m for a slide)',
    },
    rateGain: { symbol: 'K_d', unit: 's', meaning: 'command by unit of the rate source' },
    gimbalGain: { symbol: 'K_g', unit: '1', meaning: 'command by radian of gimbal tilt', default: 0 },
    rateSource: {
      symbol: 'q',
      unit: '1',
      meaning: 'what the rate gain acts on: 0 rate gyro, 1 difference of angle, 2 gimbal tilt, 3 gimbal rate',
      default: 0,
    },
  },
  outputs: {
    gainMarginUp: {
      symbol: String.raw`\kappa_{\uparrow}`,
      unit: '1',
      meaning: 'factor on all gains at which the balance is lost upwards',
    },
    gainMarginDown: {
      symbol: String.raw`\kappa_{\downarrow}`,
      unit: '1',
      meaning: 'factor on all gains at which the balance is lost downwards',
    },
    delayMargin: {
      symbol: String.raw`\delta_{\max}`,
      unit: 's',
      meaning: 'additional delay at which the balance is lost',
    },
    peakSensitivity: {
      symbol: 'M_s',
      unit: '1',
      meaning: 'largest amplification of a disturbance by the loop',
    },
  },
  validity:
    'Small lean and tilt about upright, ballast and gimbal clear of their stops, actuator below its speed limit, delay ' +
    'below 100 sample times, and a loop that is stable as it stands; a neutral gimbal mode is left out.',
  source:
    'Derived: linear equations of moments, exact zero-order hold with fractional delay (Åström and Wittenmark, ' +
    'Computer-Controlled Systems, section 2.3), Nyquist criterion on the unit circle',
  compute(figures) {
    const { margins } = judged(figures);
    return {
      gainMarginUp: margins.gainMarginUp.factor,
      gainMarginDown: margins.gainMarginDown.factor,
      delayMargin: margins.delayMargin.delay,
      peakSensitivity: margins.peakSensitivity.peak,
    };
  },
  partials(figures): MarginSlopes {
    const { loop, margins } = judged(figures);
    return marginSlopes(loop, margins);
  },
  example: {
    firstMoment: 0.492,
    rollInertia: 0.09076,
    ballastMass: 0.9,
    ballastHeight: 0.08,
    commandToOffset: 1,
    spinMomentum: 0.55,
    gimbalInertia: 9e-4,
    gimbalFriction: 0.005,
    gimbalCentring: 0.15,
    naturalFrequency: 32,
    dampingRatio: 0.85,
    sensorLag: 0.008,
    sampleTime: 0.005,
    delay: 0.018,
    leanGain: 0.95,
    rateGain: 0.04,
    gimbalGain: 0.14,
    rateSource: 0,
  },
  related: ['mass.toppling', 'gyro.nutation', 'ballast.righting-moment'],
});

/** Every calculation of this part, in the order in which the handbook prints them. */
export const controlCalculations: readonly Calculation[] = [loopMarginsCalculation, ...loopLimitCalculations];
