import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { coastDownFit, coastDownTime, rotorDrag } from './coast-down.ts';
import { fragmentCaution, fragmentEnergy, rotorSeizure } from './fragment.ts';
import { rotorEnergy, rotorInertia } from './rotor.ts';
import {
  balanceGrade,
  correctionMass,
  permissibleUnbalance,
  rotorAlias,
  unbalanceForce,
} from './rotor-balance.ts';
import { burstSpeed, discStress, meanHoopStress, ringStress, yieldSpeed } from './rotor-disc.ts';
import { rotorPeakStress } from './rotor-stress.ts';
import { spinUp, spinUpAtPower, spinUpByMotor } from './spin-up.ts';
import {
  dunkerleySpeed,
  rayleighSpeed,
  whirlingOfDisc,
  whirlingOfShaft,
  whirlingOverhung,
} from './whirling.ts';

const steel = { outerDiameter: 0.1, boreDiameter: 0.02, density: 7850 };
const at = (radius: number, boreDiameter = steel.boreDiameter) =>
  discStress({ ...steel, boreDiameter, poissonRatio: 0.3, speed: 1000, radius });

describe('stresses of a disc', () => {
  it('hold every ring of it: d(r σ_r)/dr − σ_θ + ρΩ²r² = 0', () => {
    const step = 1e-7;
    for (const boreDiameter of [0, 0.02, 0.06]) {
      for (const r of [0.031, 0.04, 0.049]) {
        const slope =
          ((r + step) * at(r + step, boreDiameter).radialStress -
            (r - step) * at(r - step, boreDiameter).radialStress) /
          (2 * step);
        const load = 7850 * 1000 ** 2 * r ** 2;
        expect(Math.abs(slope - at(r, boreDiameter).hoopStress + load) / load).toBeLessThan(1e-6);
      }
    }
  });

  it('leave bore and rim free, and meet the peak at the bore', () => {
    expect(at(0.05).radialStress).toBeCloseTo(0, 6);
    expect(at(0.01).radialStress).toBeCloseTo(0, 6);
    const peak = {
      outerDiameters: [0.1],
      boreDiameters: [0.02],
      density: 7850,
      poissonRatio: 0.3,
      speed: 1000,
    };
    expect(at(0.01).hoopStress / rotorPeakStress(peak)).toBeCloseTo(1, 13);
    const centre = at(0, 0);
    expect(centre.radialStress).toBeCloseTo(centre.hoopStress, 6);
  });

  it('average along the radius to the mean hoop stress', () => {
    const steps = 4000;
    let sum = 0;
    for (let i = 0; i < steps; i++) sum += at(0.01 + (0.04 * (i + 0.5)) / steps).hoopStress;
    expect(sum / steps / meanHoopStress({ ...steel, speed: 1000 })).toBeCloseTo(1, 6);
  });

  it('shrink to the thin ring', () => {
    const thin = { ...steel, boreDiameter: 0.1 * (1 - 1e-8), speed: 1000 };
    const ring = ringStress({ meanDiameter: 0.1, density: 7850, speed: 1000 });
    expect(meanHoopStress(thin) / ring).toBeCloseTo(1, 7);
  });

  it('reach yield at the yield speed, before the mean does', () => {
    const speed = yieldSpeed({ ...steel, yieldStrength: 235e6, poissonRatio: 0.3 });
    const peak = { outerDiameters: [0.1], boreDiameters: [0.02], density: 7850, poissonRatio: 0.3, speed };
    expect(rotorPeakStress(peak) / 235e6).toBeCloseTo(1, 12);
    expect(burstSpeed({ ...steel, tensileStrength: 235e6 })).toBeGreaterThan(speed);
    expect(
      meanHoopStress({ ...steel, speed: burstSpeed({ ...steel, tensileStrength: 360e6, share: 0.85 }) }),
    ).toBeCloseTo(0.85 * 360e6, 3);
  });

  it('are asked inside the disc only', () => {
    expect(() => at(0.06)).toThrow('radius is 0.06 m');
    expect(() => burstSpeed({ ...steel, tensileStrength: 1e8, share: 1.5 })).toThrow('share of the strength');
  });
});

describe('balance', () => {
  it('the unbalance that a grade permits has that grade', () => {
    const rotor = { rotorMass: 0.41, speed: 890 };
    const { unbalance, eccentricity } = permissibleUnbalance({ ...rotor, grade: 0.0025 });
    const back = balanceGrade({ ...rotor, unbalance });
    expect(back.grade).toBeCloseTo(0.0025, 16);
    expect(back.eccentricity).toBeCloseTo(eccentricity, 18);
    expect(unbalanceForce({ unbalance, speed: 890 })).toBeCloseTo(0.41 * 0.0025 * 890, 12);
    expect(correctionMass({ unbalance, radius: 0.04 }) * 0.04).toBeCloseTo(unbalance, 18);
  });

  it('a shake and its alias give the same samples', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 5000, noNaN: true }),
        fc.double({ min: 0.001, max: 0.02, noNaN: true }),
        (speed, sampleTime) => {
          const { alias } = rotorAlias({ speed, sampleTime });
          expect(alias).toBeLessThanOrEqual((Math.PI / sampleTime) * (1 + 1e-12));
          for (let n = 0; n < 20; n++) {
            const difference = Math.cos(speed * n * sampleTime) - Math.cos(alias * n * sampleTime);
            expect(Math.abs(difference)).toBeLessThan(1e-9);
          }
        },
      ),
    );
  });

  it('below half the sampling rate it is itself', () => {
    expect(rotorAlias({ speed: 100, sampleTime: 0.005 }).alias).toBeCloseTo(100, 10);
    expect(rotorAlias({ speed: 100, sampleTime: 0.005, harmonic: 3 }).frequency).toBe(300);
  });
});

describe('spin-up', () => {
  const motor = { inertia: 5e-4, voltage: 11.1, resistance: 0.12, torqueConstant: 0.0106, drag: 0.004 };

  /** Time and energy in small steps of the classical Runge–Kutta method. */
  function integrated(currentLimit: number, toSpeed: number): { time: number; energy: number; heat: number } {
    const { inertia, voltage, resistance, torqueConstant, drag } = motor;
    const current = (speed: number): number =>
      Math.min(currentLimit, (voltage - torqueConstant * speed) / resistance);
    const rate = (speed: number): number => (torqueConstant * current(speed) - drag) / inertia;
    const power = (speed: number): number =>
      torqueConstant * current(speed) * speed + current(speed) ** 2 * resistance;
    const dt = 1e-5;
    let [time, speed, energy, heat] = [0, 0, 0, 0];
    while (speed < toSpeed) {
      const k1 = rate(speed);
      const k2 = rate(speed + (dt / 2) * k1);
      const k3 = rate(speed + (dt / 2) * k2);
      const k4 = rate(speed + dt * k3);
      energy += power(speed + (dt / 2) * k1) * dt;
      heat += current(speed + (dt / 2) * k1) ** 2 * resistance * dt;
      speed += (dt / 6) * (k1 + 2 * k2 + 2 * k3 + k4);
      time += dt;
    }
    return { time, energy, heat };
  }

  it.each([8, 25, 200])('by a motor limited to %d A is what small steps give', (currentLimit) => {
    const { time, energy } = spinUpByMotor({ ...motor, currentLimit, toSpeed: 890 });
    const steps = integrated(currentLimit, 890);
    expect(Math.abs(time / steps.time - 1)).toBeLessThan(1e-4);
    expect(Math.abs(energy / steps.energy - 1)).toBeLessThan(1e-4);
  });

  it('takes the energy of the rotor, of the drag and of the heat out of the pack', () => {
    const { inertia, drag } = motor;
    const { energy, time } = spinUpByMotor({ ...motor, currentLimit: 8, toSpeed: 890 });
    const kinetic = rotorEnergy({ inertia, speed: 890 });
    // At the limit all the way: constant moment, so that the angle is half the speed times the time.
    expect(energy).toBeCloseTo(kinetic + drag * 445 * time + 8 ** 2 * motor.resistance * time, 9);
  });

  it('at its limit all the way is the spin-up under a constant moment', () => {
    const { time } = spinUpByMotor({ ...motor, currentLimit: 8, toSpeed: 500 });
    expect(time).toBeCloseTo(
      spinUp({ inertia: 5e-4, toSpeed: 500, moment: 8 * 0.0106, drag: 0.004 }).time,
      12,
    );
  });

  it('may be cut in two anywhere', () => {
    const whole = spinUpByMotor({ ...motor, currentLimit: 25, toSpeed: 890 });
    const first = spinUpByMotor({ ...motor, currentLimit: 25, toSpeed: 800 });
    const second = spinUpByMotor({ ...motor, currentLimit: 25, fromSpeed: 800, toSpeed: 890 });
    expect(first.time + second.time).toBeCloseTo(whole.time, 12);
    expect(first.energy + second.energy).toBeCloseTo(whole.energy, 9);
  });

  it('refuses a speed that the motor never reaches, and says how far it comes', () => {
    expect(() => spinUpByMotor({ ...motor, currentLimit: 25, toSpeed: 1100 })).toThrow(
      'the motor comes to 1043 rad/s in the end',
    );
    expect(() => spinUpByMotor({ ...motor, currentLimit: 0.3, toSpeed: 100 })).toThrow('beyond the drag');
  });

  it('under a constant power needs the energy over the power', () => {
    const time = spinUpAtPower({ inertia: 5e-4, fromSpeed: 200, toSpeed: 890, power: 30 });
    const gained = rotorEnergy({ inertia: 5e-4, speed: 890 }) - rotorEnergy({ inertia: 5e-4, speed: 200 });
    expect(time).toBeCloseTo(gained / 30, 12);
    expect(spinUp({ inertia: 5e-4, toSpeed: 890, moment: 0.05 }).work).toBeCloseTo(
      rotorEnergy({ inertia: 5e-4, speed: 890 }),
      10,
    );
  });
});

describe('coast-down', () => {
  /** ∫ dΩ/(a + bΩ + cΩ²) by the midpoint rule in the logarithm of the speed. */
  function integrated(a: number, b: number, c: number, from: number, to: number): number {
    const steps = 20_000;
    const ratio = Math.log(from / to) / steps;
    let sum = 0;
    for (let i = 0; i < steps; i++) {
      const speed = to * Math.exp((i + 0.5) * ratio);
      sum += speed / (a + b * speed + c * speed * speed);
    }
    return sum * ratio;
  }

  it.each([
    ['dry friction alone', 1.2, 0, 0],
    ['grease alone', 0, 0.02, 0],
    ['air alone', 0, 0, 3e-5],
    ['friction and air', 1.2, 0, 6e-6],
    ['mostly grease', 0.1, 0.05, 1e-6],
    ['all three', 1.2, 0.004, 6e-6],
    ['just between the two forms', 1, 0.002, 1e-6],
  ])('of %s takes the integral of its deceleration', (_, constantTerm, linearTerm, squareTerm) => {
    const time = coastDownTime({ constantTerm, linearTerm, squareTerm, fromSpeed: 890, toSpeed: 10 });
    expect(time / integrated(constantTerm, linearTerm, squareTerm, 890, 10)).toBeCloseTo(1, 6);
  });

  it('may be cut in two anywhere', () => {
    const term = fc.double({ min: 0.001, max: 5, noNaN: true });
    fc.assert(
      fc.property(term, term, term, fc.double({ min: 11, max: 880, noNaN: true }), (a, b, c, middle) => {
        const drag = { constantTerm: a, linearTerm: b / 100, squareTerm: c / 1e5 };
        const time = (fromSpeed: number, toSpeed: number): number =>
          coastDownTime({ ...drag, fromSpeed, toSpeed });
        expect(time(890, middle) + time(middle, 10)).toBeCloseTo(time(890, 10), 8);
      }),
    );
  });

  it('never ends without dry friction', () => {
    const drag = { constantTerm: 0, linearTerm: 0.01, squareTerm: 0 };
    expect(() => coastDownTime({ ...drag, fromSpeed: 890, toSpeed: 0 })).toThrow('never stops');
    expect(() => coastDownTime({ ...drag, fromSpeed: 10, toSpeed: 20 })).toThrow('more than the start');
    expect(coastDownTime({ ...drag, fromSpeed: 10, toSpeed: 10 })).toBe(0);
  });

  it('read with a noisy tachometer still tells the drag at working speed', () => {
    const times = Array.from({ length: 121 }, (_, i) => i);
    // Dry friction and grease: Ω = (Ω₀ + a/b) e^(−bt) − a/b, with ±2 rad/s of scatter.
    const speeds = times.map((t) => (890 + 120) * Math.exp(-0.01 * t) - 120 + 2 * Math.sin(7.3 * t));
    const fit = coastDownFit({ times, speeds });
    const { moment } = rotorDrag({ inertia: 5e-4, speed: 600, ...positive(fit) });
    expect(moment / (5e-4 * (1.2 + 0.01 * 600))).toBeCloseTo(1, 1);
  });

  it('from readings that never change tells nothing', () => {
    expect(() => coastDownFit({ times: [0, 1, 2, 3], speeds: [5, 5, 5, 5] })).toThrow('three terms apart');
    expect(() => coastDownFit({ times: [0, 1, 2], speeds: [5, 4, 3] })).toThrow('at least four');
    expect(() => coastDownFit({ times: [0, 2, 1, 3], speeds: [5, 4, 3, 2] })).toThrow('times have to rise');
  });

  /** The fit of scattered data may give a term a little below 0; drag is asked with what the data carry. */
  function positive(fit: ReturnType<typeof coastDownFit>): ReturnType<typeof coastDownFit> {
    return {
      constantTerm: Math.max(0, fit.constantTerm),
      linearTerm: Math.max(0, fit.linearTerm),
      squareTerm: Math.max(0, fit.squareTerm),
    };
  }
});

describe('whirling', () => {
  const shaft = { elasticModulus: 205e9, shaftDiameter: 0.005, span: 0.04, discMass: 0.41 };

  it('is slowest with the disc in the middle, 48 E J/L³', () => {
    const { stiffness, speed } = whirlingOfDisc({ ...shaft, position: 0.02 });
    expect(stiffness).toBeCloseTo((48 * 205e9 * Math.PI * 0.005 ** 4) / 64 / 0.04 ** 3, 3);
    expect(whirlingOfDisc({ ...shaft, position: 0.01 }).speed).toBeGreaterThan(speed);
    expect(whirlingOfDisc({ ...shaft, position: 0.01 }).speed).toBeCloseTo(
      whirlingOfDisc({ ...shaft, position: 0.03 }).speed,
      8,
    );
  });

  it('an overhung disc whirls as on a cantilever where the bearings stand close, and slower on a span', () => {
    const overhung = whirlingOverhung({ ...shaft, span: 1e-9, overhang: 0.02 });
    expect(overhung.stiffness).toBeCloseTo((3 * 205e9 * Math.PI * 0.005 ** 4) / 64 / 0.02 ** 3, -1);
    expect(whirlingOverhung({ ...shaft, overhang: 0.02 }).stiffness).toBeLessThan(overhung.stiffness);
  });

  it('by Rayleigh of one disc is exact, whatever its mass', () => {
    const { stiffness, speed } = whirlingOfDisc({ ...shaft, position: 0.02 });
    const deflection = (0.41 * 9.80665) / stiffness;
    expect(rayleighSpeed({ masses: [0.41], deflections: [deflection] })).toBeCloseTo(speed, 8);
  });

  it('Dunkerley stays below each part alone, and below Rayleigh', () => {
    // Two discs at the thirds of a massless shaft: influence coefficients 16/972 and 14/972 of L³/(E J).
    const unit = 0.04 ** 3 / ((205e9 * Math.PI * 0.005 ** 4) / 64);
    const [own, cross] = [(16 / 972) * unit, (14 / 972) * unit];
    const weight = 0.41 * 9.80665;
    const alone = whirlingOfDisc({ ...shaft, position: 0.04 / 3 }).speed;
    expect(alone).toBeCloseTo(1 / Math.sqrt(own * 0.41), 6);
    const low = dunkerleySpeed({ speeds: [alone, alone] });
    const deflection = weight * (own + cross);
    const high = rayleighSpeed({ masses: [0.41, 0.41], deflections: [deflection, deflection] });
    const exact = 1 / Math.sqrt((own + cross) * 0.41);
    expect(low).toBeLessThan(exact);
    expect(high).toBeCloseTo(exact, 6);
    expect(dunkerleySpeed({ speeds: [300, 400] })).toBeCloseTo(240, 12);
  });

  it('of a bored shaft is faster than of a solid one of the same diameter', () => {
    const bare = { elasticModulus: 205e9, shaftDiameter: 0.005, span: 0.04, density: 7850 };
    expect(whirlingOfShaft({ ...bare, shaftBore: 0.004 })).toBeGreaterThan(whirlingOfShaft(bare));
    expect(() => whirlingOfDisc({ ...shaft, position: 0.05 })).toThrow('overhung');
    expect(() => dunkerleySpeed({ speeds: [] })).toThrow('at least one');
  });
});

describe('when it goes wrong', () => {
  const rotor = { mass: 0.3, outerDiameter: 0.1, boreDiameter: 0.08, speed: 1047.2 };

  it('the pieces share the energy of the rotor', () => {
    const inertia = (0.3 * (0.1 ** 2 + 0.08 ** 2)) / 8;
    for (const pieces of [2, 3, 7]) {
      const { pieceEnergy, flightEnergy, share } = fragmentEnergy({ ...rotor, pieces });
      expect(pieces * pieceEnergy).toBeCloseTo(rotorEnergy({ inertia, speed: 1047.2 }), 9);
      expect(flightEnergy / pieceEnergy).toBeCloseTo(share, 13);
      expect(share).toBeLessThan(1);
    }
  });

  it('the more pieces, the more of the energy flies, each with less of it', () => {
    const three = fragmentEnergy({ ...rotor, pieces: 3 });
    const nine = fragmentEnergy({ ...rotor, pieces: 9 });
    expect(nine.share).toBeGreaterThan(three.share);
    expect(nine.flightEnergy).toBeLessThan(three.flightEnergy);
    expect(fragmentEnergy({ ...rotor, boreDiameter: 0.1 * (1 - 1e-9), pieces: 1000 }).share).toBeCloseTo(
      1,
      4,
    );
    expect(() => fragmentEnergy({ ...rotor, pieces: 1 })).toThrow('at least 2');
  });

  it('the figure beside an eyewear test is a ratio of energies and nothing else', () => {
    expect(fragmentCaution({ flightEnergy: 8.8 })).toBeCloseTo(2, 14);
    // 6.35 mm of steel at 91.4 m/s
    const ball = 0.5 * 7800 * (Math.PI / 6) * 0.00635 ** 3 * 91.4 ** 2;
    expect(fragmentCaution({ flightEnergy: ball })).toBeCloseTo(1, 1);
  });

  it('a seized rotor hands its momentum on and loses the rest as heat', () => {
    const { inertia } = rotorInertia({
      outerDiameters: [0.1],
      boreDiameters: [0.08],
      thicknesses: [0.02],
      density: 7850,
    });
    const spinMomentum = inertia * 900;
    const { bodyRate, lostShare } = rotorSeizure({ spinMomentum, rotorInertia: inertia, bodyInertia: 0.004 });
    const before = rotorEnergy({ inertia, speed: 900 });
    const after = rotorEnergy({ inertia: inertia + 0.004, speed: bodyRate });
    expect(after / before).toBeCloseTo(1 - lostShare, 13);
  });
});
