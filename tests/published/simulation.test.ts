/** The simulation against figures from outside: fall times, pendulum periods, delayed control, servo describing functions. */
import { describe, expect, it } from 'vitest';
import { balanceLoop, loopMargins } from '../../src/control/index.ts';
import { standardGravity } from '../../src/mechanics/index.ts';
import { ballastDrive, follow, go, look, lookTo } from '../../src/simulation/ballast-drive.ts';
import { linearHardware, proportion, type SimulationModel, simulate } from '../../src/simulation/index.ts';
import { stepCoefficients } from '../../src/simulation/step-coefficients.ts';
import { integrate, unattended, workedVehicle } from '../specimen/motion.ts';
import { atSampleTimeZero } from './continuous-loop.ts';
import { expectPrinted } from './printed.ts';

const degree = Math.PI / 180;
/** A rigid pendulum: no rotor, its ballast still. Time constant √(I/gM). */
const pendulum: SimulationModel = {
  ...unattended(workedVehicle),
  vehicle: { ...workedVehicle.vehicle, spinMomentum: 0, gimbalInertia: 0 },
};
const { firstMoment, rollInertia } = linearHardware(pendulum);
const timeConstant = Math.sqrt(rollInertia / (standardGravity * firstMoment));

/** Time from rest at one lean to another, in time constants. */
function timeTo(from: number, to: number): number {
  const { outcome, end } = simulate(
    pendulum,
    { duration: 20 * timeConstant, start: { lean: from } },
    { step: 1e-4, leanLimit: to, rowEvery: 0 },
  );
  expect(outcome).toBe('fell');
  return end.time / timeConstant;
}

describe('a vehicle that falls', () => {
  const source = 'closed form with elliptic integrals, t = K(k) − F(asin(cos(θ₁/2)/k), k), evaluated twice';
  it.each([
    ['P4', 1, 90, '5.24636153047'],
    ['P5', 1, 30, '4.09987615007'],
    ['P6', 0.1, 90, '7.54888111719'],
    ['P6', 2, 90, '4.55336138683'],
    ['P6', 5, 90, '3.63775562926'],
    ['P6', 10, 90, '2.94597478347'],
  ] as const)(`%s: from %s° to %s° takes %s τ (${source})`, (_, from, to, printed) => {
    expectPrinted(timeTo(from * degree, to * degree), printed);
  });

  it.each([
    [10, '1.00190718814322'],
    [30, '1.01740879759596'],
    [60, '1.07318200714936'],
    [90, '1.18034059901610'],
    [120, '1.37288050061835'],
    [150, '1.76220372950376'],
    [170, '2.43936271967388'],
  ] as const)(
    'O5: swings from %s° about hanging with %s of the small period (2 K(sin θ₀/2)/π)',
    (from, printed) => {
      // a quarter of the period, from rest to hanging, which is at a lean of 180°
      const ratio = timeTo(Math.PI - from * degree, Math.PI) / (Math.PI / 2);
      expect(Math.abs(ratio - Number(printed))).toBeLessThan(5e-12);
    },
  );
});

/**
 * PD control of ẍ = a x + u behind a delay, as a vehicle: ballast on the ground line, a drive that is ever quicker, its
 * lag and half a sample taken off the delay.
 */
function delayedPd(a: number, p: number, d: number, delay: number, sampleTime: number): SimulationModel {
  const quick = 4 / sampleTime;
  const M = 0.5;
  const ballastMass = 0.5;
  const inertia = (standardGravity * M) / a;
  const perGain = inertia / (standardGravity * ballastMass);
  return {
    drive: 'slide',
    vehicle: {
      firstMomentWithout: M,
      rollInertiaWithout: inertia,
      ballastMass,
      driveHeight: 0,
      travel: 10,
      naturalFrequency: quick,
      dampingRatio: 1,
    },
    controller: {
      sampleTime,
      delay: delay - sampleTime / 2 - 2 / quick,
      leanGain: p * perGain,
      rateGain: d * perGain,
      gimbalGain: 0,
      rateSource: 'rate gyro',
    },
  };
}

/** The slowest pair of the motion, once all else has died out: from x(t + 2Δ) − 2 Re z x(t + Δ) + |z|² x(t) = 0. */
function slowestPair(model: SimulationModel, after: number, spacing: number): { re: number; im: number } {
  const { sampleTime } = model.controller;
  const stride = Math.round(spacing / sampleTime);
  const first = Math.round(after / sampleTime);
  const duration = (first + 4 * stride) * sampleTime;
  const { columns } = simulate(
    model,
    { duration, start: { lean: 1e-5 } },
    { step: sampleTime, leanLimit: 100 },
  );
  const [a = 0, b = 0, c = 0, d = 0] = [0, 1, 2, 3].map((i) => columns.lean[first + i * stride]);
  const determinant = b * b - a * c;
  const sum = (b * c - a * d) / determinant;
  const product = (c * c - b * d) / determinant;
  const time = stride * sampleTime;
  return {
    re: Math.log(product) / (2 * time),
    im: Math.acos(sum / (2 * Math.sqrt(product))) / time,
  };
}

describe('PD with delay on an inverted pendulum', () => {
  it.each([
    ['R1', 1, 1.5, 1, 0.5, 6, '-0.13217', '0.85058'],
    ['R2', 1, 2, 1.5, 0.5, 8, '-0.19984', '1.40826'],
    ['R3', 25, 40, 6, 0.1, 1.5, '-1.1877', '5.0170'],
    ['R4', 25, 60, 10, 0.05, 1.2, '-7.439', '6.036'],
    ['R5', 9.81, 15, 4, 0.1, 1.5, '-1.9281', '2.2083'],
  ] as const)(
    '%s: the motion dies out as the roots of s² − a + (P + D s) e^{−sτ} say, computed independently',
    (_, a, p, d, delay, after, re, im) => {
      const read = (of: 're' | 'im'): number =>
        atSampleTimeZero(
          (t) => slowestPair(delayedPd(a, p, d, delay, t), after, 4 * delay)[of],
          delay / 10,
          3,
        );
      expectPrinted(read('re'), re);
      expectPrinted(read('im'), im);
    },
  );

  const limit =
    'P(ω) = (ω² + a) cos ωτ, D(ω) = (ω² + a) sin ωτ / ω; G. Stépán, Phil. Trans. R. Soc. A 367 (2009) 1195 (from memory), re-derived';
  it.each([
    [1, 0.5, 2.702066162638, 2.128786309, '2.019'],
    [1, 1, 1.143562836628, 1.438301269, '0.768'],
    [25, 0.1, 67.551654065951, 10.643931544, '10.10'],
    [25, 0.2, 28.589070915712, 7.191506286, '3.84'],
  ])(`a = %s, τ = %s s: at P = %s and D = %s it swings for ever (${limit})`, (a, delay, p, d, frequency) => {
    const read = (of: 're' | 'im'): number =>
      atSampleTimeZero(
        (t) => slowestPair(delayedPd(a, p, d, delay, t), 40 * delay, delay)[of],
        delay / 10,
        3,
      );
    expectPrinted(read('im'), frequency);
    expect(Math.abs(read('re'))).toBeLessThan(2e-3 * Number(frequency));
  });

  it.each([
    ['point mass at 0.25 m', 9.81 / 0.25, 0.22576182],
    ['free rod of 0.32 m', (6 * 9.81) / 0.32, 0.104274918],
  ])(
    '%s: held with less delay than √(2/a), by nothing with more (G. Stépán, L. Kollár, Math. Comput. Modelling 31 (2000) 199; formula from memory)',
    (_, a, critical) => {
      const held = (delay: number): boolean => {
        for (let i = 1; i <= 6; i++) {
          for (let j = -3; j <= 3; j++) {
            const p = a * (1 + 0.003 * i ** 2);
            const d = a * delay * (1 + 0.006 * i + 0.02 * j);
            const model = delayedPd(a, p, d, delay, delay / 20);
            const start = { lean: 1e-6 };
            const run = simulate(
              model,
              { duration: 300 * delay, start },
              { step: delay / 20, leanLimit: 1e-3 },
            );
            if (run.outcome === 'fell') continue;
            const { columns } = run;
            const peak = (rows: Float64Array): number => Math.max(...rows.map(Math.abs));
            const half = columns.lean.length >> 1;
            if (peak(columns.lean.slice(half)) < peak(columns.lean.slice(0, half >> 1))) return true;
          }
        }
        return false;
      };
      expect(held(0.85 * critical)).toBe(true);
      expect(held(1.05 * critical)).toBe(false);
    },
  );
});

/** Fundamental of what the drive (or its ballast) does by a sine command, relative to it. */
function describingFunction(
  limits: { readonly noLoadSpeed?: number; readonly deadBand?: number; readonly backlash?: number },
  amplitude: number,
  frequency: number,
): { size: number; phase: number } {
  const parts = { naturalFrequency: 4000 * frequency, dampingRatio: 1, lag: 0 };
  const ideal = { travel: 1e3, noLoadSpeed: Number.POSITIVE_INFINITY, deadBand: 0, backlash: 0 };
  const drive = ballastDrive({ ...parts, ...ideal, ...limits }, 0, 0);
  const perTurn = 4000;
  const turns = 8; // until what it began with is forgotten
  const step = (2 * Math.PI) / frequency / perTurn;
  let [inPhase, across] = [0, 0];
  for (let k = 0; k < (turns + 1) * perTurn; k++) {
    // the command held over the step stands for its middle
    follow(drive, amplitude * Math.sin(frequency * step * (k + 0.5)));
    for (let left = step; left > 1e-12 * step; ) {
      look(drive, stepCoefficients(parts, left));
      const event = drive.eventTime;
      if (event < left) lookTo(drive, stepCoefficients(parts, event));
      go(drive);
      left -= event;
    }
    if (k < turns * perTurn) continue;
    const angle = frequency * step * (k + 1);
    inPhase += (2 / perTurn) * (drive.ballast[0] ?? 0) * Math.sin(angle);
    across += (2 / perTurn) * (drive.ballast[0] ?? 0) * Math.cos(angle);
  }
  return { size: Math.hypot(inPhase, across) / amplitude, phase: Math.atan2(across, inPhase) / degree };
}

describe('the drive as its describing functions have it', () => {
  const rate = 'rate limiter; aircraft-PIO literature (from memory), checked by an independent simulation';
  it.each([
    ['N5', 2, 0.63662, -38.24],
    ['N6', 4, 0.31831, -66.85],
    ['N7', 1.5, 0.83836, -15.81],
  ] as const)(`%s: speed needed %s times its limit (${rate})`, (_, ratio, size, phase) => {
    const found = describingFunction({ noLoadSpeed: 1 }, ratio, 1);
    expect(found.size).toBeCloseTo(size, 3);
    expect(Math.abs(found.phase - phase)).toBeLessThan(0.1);
  });

  it('N3: play of half the amplitude: 0.8045 − 0.2387 j (A. Gelb, W. E. Vander Velde 1968, no. 48, by python-control)', () => {
    const { size, phase } = describingFunction({ backlash: 1 }, 2, 1);
    expect(size).toBeCloseTo(0.839173, 3);
    expect(Math.abs(phase + 16.528)).toBeLessThan(0.1);
  });
});

describe('a limit cycle', () => {
  it('with the travel too short for gains 5 % above the margin, as the describing function of saturation predicts', () => {
    const { controller } = workedVehicle;
    const margins = loopMargins(balanceLoop(linearHardware(workedVehicle), controller));
    if (!margins.stable) throw new Error('the worked loop is stable');
    const { factor, frequency } = margins.gainMarginUp;
    const k = 1.05 * factor;
    const travel = 0.002;
    const gains = { leanGain: k * 0.95, rateGain: k * 0.04, gimbalGain: k * 0.14 };
    const { columns, outcome } = simulate(
      {
        ...workedVehicle,
        vehicle: { ...workedVehicle.vehicle, travel },
        controller: { ...controller, ...gains },
      },
      { duration: 60, start: { lean: 1e-5 } },
    );
    expect(outcome).toBe('settled'); // small, but it does not die out
    const rows = [...columns.lean.keys()].slice(8000, -1);
    const wanted = rows.map(
      (i) =>
        gains.leanGain * (columns.leanReading[i] ?? 0) +
        gains.rateGain * (columns.rateReading[i] ?? 0) +
        gains.gimbalGain * (columns.gimbalTilt[i] ?? 0),
    );
    const fundamental = (w: number): number => {
      const sum = (f: (angle: number) => number): number =>
        wanted.reduce(
          (total, u, i) => total + u * (1 - Math.cos((2 * Math.PI * i) / wanted.length)) * f(w * i * 0.005),
          0,
        );
      return (2 * Math.hypot(sum(Math.cos), sum(Math.sin))) / wanted.length;
    };
    const frequencies = Array.from({ length: 121 }, (_, i) => frequency * (0.97 + 0.0005 * i));
    const amplitudes = frequencies.map(fundamental);
    const amplitude = Math.max(...amplitudes);
    const found = frequencies[amplitudes.indexOf(amplitude)] ?? Number.NaN;
    // N(A) = 1/1.05 with N(A) = (2/π)(asin(b/A) + (b/A) √(1 − (b/A)²)), b the travel (python-control, descfcn)
    const n = (a: number): number => {
      const x = travel / a;
      return (2 / Math.PI) * (Math.asin(x) + x * Math.sqrt(1 - x * x));
    };
    let [low, high] = [travel, 10 * travel];
    for (let i = 0; i < 60; i++) {
      const middle = (low + high) / 2;
      if (n(middle) > 1 / 1.05) low = middle;
      else high = middle;
    }
    expect(found / frequency).toBeCloseTo(1, 2);
    expect(amplitude / low).toBeGreaterThan(0.94);
    expect(amplitude / low).toBeLessThan(1.04);
  });
});

describe('a proportion', () => {
  const newcombe = 'R. G. Newcombe, Statistics in Medicine 17 (1998) 857, table I, method 3 (from memory)';
  it.each([
    [81, 263, '0.2553', '0.3662'],
    [15, 148, '0.0624', '0.1605'],
    [0, 20, '0.0000', '0.1611'],
    [1, 29, '0.0061', '0.1718'],
  ])(`%s of %s: between %s and %s (${newcombe})`, (stayed, runs, low, high) => {
    const found = proportion(stayed, runs);
    expectPrinted(found.low, low);
    expectPrinted(found.high, high);
  });
});

describe('the method that runs are compared with', () => {
  const brusselator = ([x = 0, y = 0]: readonly number[]): number[] => [
    1 + x * x * y - 4 * x,
    3 * x - x * x * y,
  ];
  const end = [0.49863707126834783, 4.596780349452011];
  const source =
    'E. Hairer, S. P. Nørsett, G. Wanner, Solving Ordinary Differential Equations I, p. 116, by russell_ode';

  it.each([
    [500, '7.372e-6'],
    [1000, '4.627e-7'],
    [2000, '2.903e-8'],
    [4000, '1.82e-9'],
  ])(
    `O3: Brusselator in %s steps, off by %s (${source}; errors computed independently)`,
    (steps, printed) => {
      const found = integrate(brusselator, [1.5, 3], 20, steps);
      expectPrinted(Math.hypot(...found.map((value, i) => value - (end[i] ?? 0))), printed);
    },
  );

  it('O4: Van der Pol, ε = 1, comes back after its period 6.66328685932313 (russell_ode)', () => {
    const amplitude = 2.0086198608748433;
    const vanDerPol = ([x = 0, v = 0]: readonly number[]): number[] => [v, (1 - x * x) * v - x];
    const [x = 0, v = 1] = integrate(vanDerPol, [amplitude, 0], 6.66328685932313, 20000);
    expect(x).toBeCloseTo(amplitude, 11);
    expect(v).toBeCloseTo(0, 11);
  });

  it('O1: Arenstorf orbit closes, and closes 16 times better with half the step (Hairer, Nørsett, Wanner I, p. 129)', () => {
    const mu = 0.012277471;
    const orbit = ([x = 0, y = 0, vx = 0, vy = 0]: readonly number[]): number[] => {
      const earth = Math.hypot(x + mu, y) ** 3;
      const moon = Math.hypot(x - 1 + mu, y) ** 3;
      return [
        vx,
        vy,
        x + 2 * vy - ((1 - mu) * (x + mu)) / earth - (mu * (x - 1 + mu)) / moon,
        y - 2 * vx - ((1 - mu) * y) / earth - (mu * y) / moon,
      ];
    };
    const miss = (steps: number): number => {
      const start = [0.994, 0, 0, -2.0015851063790824];
      const [x = 0, y = 0] = integrate(orbit, start, 17.065216560157964, steps);
      return Math.hypot(x - 0.994, y);
    };
    const [coarse, fine] = [miss(100_000), miss(200_000)];
    expect(fine).toBeLessThan(1e-4);
    expect(Math.log2(coarse / fine)).toBeGreaterThan(3.7);
    expect(Math.log2(coarse / fine)).toBeLessThan(4.5);
  });
});

describe('the worked balance loop (computed independently with NumPy and SciPy from the same linear equations)', () => {
  it.each([
    [10, '0.011811676'],
    [50, '0.009525272'],
    [100, '0.008899178'],
    [400, '0.001871867'],
  ])('lean after %s samples: %s rad', (samples, printed) => {
    const size = 1e-5; // where nothing but the linear part is seen
    const { columns } = simulate(workedVehicle, { duration: 2, start: { lean: size } }, { step: 2.5e-4 });
    expectPrinted(((columns.lean[samples] ?? Number.NaN) * 0.01) / size, printed);
  });
});
