import { describe, expect, it } from 'vitest';
import { timeToStop, timeToStopFromLean } from './gimbal-time.ts';
import { slowTopplingTime } from './gyro-toppling.ts';

const stroke = { spinMomentum: 0.445, gimbalTravel: Math.PI / 4 };
const degrees = (angle: number): number => (angle * Math.PI) / 180;

/**
 * Time to the stop of a free gimbal with friction, inertias left out but the tilt at full size:
 *   K φ = H cos α α̇   and   c α̇ = H cos α φ̇   give   t = (H/K) ∫ cos α / (φ₀ + (c/H)(artanh sin α − artanh sin α₀)) dα,
 * by Simpson's rule.
 */
function quasiStaticTime(H: number, K: number, c: number, lean: number, from: number, to: number): number {
  const integrand = (tilt: number): number =>
    Math.cos(tilt) / (lean + (c / H) * (Math.atanh(Math.sin(tilt)) - Math.atanh(Math.sin(from))));
  const steps = 2000;
  const width = (to - from) / steps;
  let sum = integrand(from) + integrand(to);
  for (let i = 1; i < steps; i++) sum += (i % 2 === 1 ? 4 : 2) * integrand(from + i * width);
  return ((H / K) * sum * width) / 3;
}

interface Motion {
  readonly lean: number;
  readonly leanRate: number;
  readonly tilt: number;
  readonly tiltRate: number;
}

/** The full equations of lean and tilt, ballast centred and still, by the classical Runge–Kutta step. */
function timeOfMotion(
  { H, K, I, Ig, c }: Readonly<Record<'H' | 'K' | 'I' | 'Ig' | 'c', number>>,
  start: Motion,
  stop: number,
): number {
  const rate = (m: Motion): Motion => ({
    lean: m.leanRate,
    leanRate: (K * Math.sin(m.lean) - H * Math.cos(m.tilt) * m.tiltRate) / I,
    tilt: m.tiltRate,
    tiltRate: (H * Math.cos(m.tilt) * m.leanRate - c * m.tiltRate) / Ig,
  });
  const ahead = (m: Motion, r: Motion, dt: number): Motion => ({
    lean: m.lean + dt * r.lean,
    leanRate: m.leanRate + dt * r.leanRate,
    tilt: m.tilt + dt * r.tilt,
    tiltRate: m.tiltRate + dt * r.tiltRate,
  });
  const dt = 1e-4;
  let motion = start;
  let time = 0;
  while (motion.tilt < stop) {
    if (time > 100) throw new Error('the gimbal does not reach its stop');
    const r1 = rate(motion);
    const r2 = rate(ahead(motion, r1, dt / 2));
    const r3 = rate(ahead(motion, r2, dt / 2));
    const r4 = rate(ahead(motion, r3, dt));
    for (const [r, share] of [
      [r1, 1 / 6],
      [r2, 1 / 3],
      [r3, 1 / 3],
      [r4, 1 / 6],
    ] as const) {
      motion = ahead(motion, r, share * dt);
    }
    time += dt;
  }
  return time;
}

describe('time to the gimbal stop under a constant moment', () => {
  it('a full stroke gives the impulse 2 H sin α_m', () => {
    const time = timeToStop({ ...stroke, initialTilt: -stroke.gimbalTravel, moment: 0.1 });
    expect(0.1 * time).toBeCloseTo(2 * 0.445 * Math.sin(Math.PI / 4), 14);
  });

  it('twice the moment leaves half the time; a start nearer the stop leaves less', () => {
    const time = timeToStop({ ...stroke, moment: 0.1 });
    expect(timeToStop({ ...stroke, moment: 0.2 })).toBeCloseTo(time / 2, 14);
    expect(timeToStop({ ...stroke, initialTilt: 0.3, moment: 0.1 })).toBeLessThan(time);
    expect(timeToStop({ ...stroke, initialTilt: stroke.gimbalTravel, moment: 0.1 })).toBe(0);
  });

  it('refuses a tilt beyond the stop, a travel beyond 90° and no moment', () => {
    expect(() => timeToStop({ ...stroke, initialTilt: 0.9, moment: 0.1 })).toThrow(
      'initial tilt of the gimbal is 51.5662°, but it has to lie between −45° and 45°',
    );
    expect(() => timeToStop({ ...stroke, gimbalTravel: 1.6, moment: 0.1 })).toThrow('between 0° and 90°');
    expect(() => timeToStop({ ...stroke, moment: 0 })).toThrow('roll moment');
  });
});

describe('time to the gimbal stop from a lean', () => {
  const fall = { stiffness: 1.358, lean: degrees(2.5) };

  it('tends to the time under the constant moment K φ₀ as the friction goes to nought', () => {
    const constant = timeToStop({ ...stroke, moment: fall.stiffness * fall.lean });
    expect(timeToStopFromLean({ ...stroke, ...fall, slowTime: 1e9 })).toBeCloseTo(constant, 6);
    expect(timeToStopFromLean({ ...stroke, ...fall, slowTime: 5 })).toBeLessThan(constant);
  });

  it.each([
    [30, 0.014],
    [45, 0.031],
    [60, 0.051],
  ])(
    'is long, for a stop at %d°, by no more than %d of itself, whatever friction and lean',
    (stopAt, most) => {
      const gimbalTravel = degrees(stopAt);
      const { spinMomentum, stiffness } = { spinMomentum: 0.1, stiffness: 3 };
      for (const lean of [0.001, 0.01, 0.05, 0.2]) {
        for (const friction of [1e-5, 1e-3, 2e-3, 5e-3, 1e-2, 0.1]) {
          const slowTime = slowTopplingTime({
            spinMomentum,
            stiffness,
            gimbalInertia: 0,
            gimbalFriction: friction,
          });
          const formula = timeToStopFromLean({ spinMomentum, gimbalTravel, stiffness, lean, slowTime });
          const quasiStatic = quasiStaticTime(spinMomentum, stiffness, friction, lean, 0, gimbalTravel);
          expect(formula).toBeGreaterThan(quasiStatic * (1 - 1e-6));
          expect(formula).toBeLessThan(quasiStatic * (1 + most));
        }
      }
    },
  );

  it('agrees with the full equations of motion to a few per cent', () => {
    const vehicle = { H: 0.445, K: 1.358, I: 0.0264, Ig: 4e-4, c: 0.002 };
    const slowTime = slowTopplingTime({
      spinMomentum: vehicle.H,
      stiffness: vehicle.K,
      gimbalInertia: vehicle.Ig,
      gimbalFriction: vehicle.c,
    });
    const formula = timeToStopFromLean({ ...stroke, ...fall, slowTime });
    // Let go with the gimbal already precessing under the moment, so that little nutation is left.
    const tiltRate = (vehicle.K * fall.lean) / vehicle.H;
    const start = { lean: fall.lean, leanRate: (vehicle.c * tiltRate) / vehicle.H, tilt: 0, tiltRate };
    const motion = timeOfMotion(vehicle, start, stroke.gimbalTravel);
    expect(Math.abs(formula / motion - 1)).toBeLessThan(0.02);
  });

  it('refuses a vehicle that stands upright or lies flat', () => {
    expect(() => timeToStopFromLean({ ...stroke, ...fall, lean: 0, slowTime: 5 })).toThrow(
      'lean at the start',
    );
    expect(() => timeToStopFromLean({ ...stroke, ...fall, lean: 1.6, slowTime: 5 })).toThrow('less than 90°');
  });
});
