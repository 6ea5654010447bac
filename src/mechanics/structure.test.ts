import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { armFrequency, armStiffness, bendingStress, rectangleSection, tubeSection } from './bars.ts';
import { boltGroup, boltPreload, jointSlip, printedStrength } from './joints.ts';
import { armRootMoment, axleLoads, dropLoad, fallOver, stopLoad, wheelSideLoad } from './loads.ts';
import { planeStress } from './plane-stress.ts';
import { shaftDiameter, shaftStress, shaftTorsion, shaftTwist } from './shaft-stress.ts';
import { toppling } from './toppling.ts';

const g = 9.80665;

describe('shafts', () => {
  it('are stressed at the bore in proportion to the radius', () => {
    const { outerStress, innerStress } = shaftTorsion({ moment: 0.4, diameter: 0.008, bore: 0.005 });
    expect(innerStress / outerStress).toBeCloseTo(5 / 8, 14);
    expect(shaftTorsion({ moment: 0.4, diameter: 0.008 }).innerStress).toBe(0);
  });

  it('twist by their shear strain: τ = G ψ r / l', () => {
    const shaft = { moment: 0.4, diameter: 0.008, bore: 0.005 };
    const twist = shaftTwist({ ...shaft, length: 0.04, shearModulus: 79e9 });
    expect((79e9 * twist * 0.004) / 0.04 / shaftTorsion(shaft).outerStress).toBeCloseTo(1, 13);
  });

  it('have the equivalent stresses of the plane state at their outside', () => {
    const load = { bendingMoment: 0.9, torsion: 0.4, axialForce: -50, diameter: 0.006, bore: 0.002 };
    const { normalStress, shearStress, vonMises, tresca } = shaftStress(load);
    const point = planeStress({ firstStress: normalStress, secondStress: 0, shearStress });
    expect(point.vonMises / vonMises).toBeCloseTo(1, 13);
    expect(point.tresca / tresca).toBeCloseTo(1, 13);
  });

  it('of the required diameter carry half the Tresca stress that was permitted', () => {
    const diameter = shaftDiameter({ bendingMoment: 0.9, torsion: 0.4, shearStress: 60e6 });
    const { tresca } = shaftStress({ bendingMoment: 0.9, torsion: 0.4, diameter });
    expect(tresca / 2 / 60e6).toBeCloseTo(1, 12);
    expect(() => shaftDiameter({ bendingMoment: 0, torsion: 0, shearStress: 60e6 })).toThrow(
      'equivalent moment',
    );
  });

  it('a bore costs little: 6 % of the strength at half the diameter', () => {
    const solid = shaftTorsion({ moment: 1, diameter: 0.01 }).outerStress;
    const bored = shaftTorsion({ moment: 1, diameter: 0.01, bore: 0.005 }).outerStress;
    expect(bored / solid).toBeCloseTo(16 / 15, 13);
    expect(() => shaftTorsion({ moment: 1, diameter: 0.01, bore: 0.01 })).toThrow('bore of the shaft');
  });
});

describe('a plane state of stress', () => {
  const stress = fc.double({ min: -300, max: 300, noNaN: true });

  it('has the same principal stresses however its axes are turned', () => {
    fc.assert(
      fc.property(stress, stress, stress, fc.double({ min: -3, max: 3, noNaN: true }), (x, y, xy, turn) => {
        const [c, s] = [Math.cos(turn), Math.sin(turn)];
        const before = planeStress({ firstStress: x, secondStress: y, shearStress: xy });
        const after = planeStress({
          firstStress: x * c * c + y * s * s + 2 * xy * s * c,
          secondStress: x * s * s + y * c * c - 2 * xy * s * c,
          shearStress: (y - x) * s * c + xy * (c * c - s * s),
        });
        for (const name of ['largest', 'least', 'vonMises', 'tresca'] as const) {
          expect(after[name]).toBeCloseTo(before[name], 9);
        }
      }),
    );
  });

  it('von Mises lies between √3/2 of Tresca and Tresca', () => {
    fc.assert(
      fc.property(stress, stress, stress, (x, y, xy) => {
        const { vonMises, tresca } = planeStress({ firstStress: x, secondStress: y, shearStress: xy });
        expect(vonMises).toBeLessThanOrEqual(tresca * (1 + 1e-12));
        expect(vonMises).toBeGreaterThanOrEqual((Math.sqrt(3) / 2) * tresca * (1 - 1e-12));
      }),
    );
  });
});

describe('bars', () => {
  it('a bar on edge is stiffer than flat, by the square of its sides', () => {
    const edge = rectangleSection({ width: 0.004, height: 0.01 });
    const flat = rectangleSection({ width: 0.01, height: 0.004 });
    expect(edge.secondMoment / flat.secondMoment).toBeCloseTo(2.5 ** 2, 12);
    expect(edge.modulus / flat.modulus).toBeCloseTo(2.5, 12);
  });

  it('a tube has the section of what is left of the bar', () => {
    const whole = tubeSection({ diameter: 0.008 }).secondMoment;
    const core = tubeSection({ diameter: 0.006 }).secondMoment;
    expect(tubeSection({ diameter: 0.008, bore: 0.006 }).secondMoment).toBeCloseTo(whole - core, 18);
  });

  it('a cantilever bends as the double integral of its curvature', () => {
    const [E, J, L, F] = [70e9, 5.333e-11, 0.115, 5.8];
    const steps = 2000;
    let [slope, deflection] = [0, 0];
    for (let i = 0; i < steps; i++) {
      const x = ((i + 0.5) * L) / steps;
      const bend = (F * (L - x)) / (E * J);
      deflection += (slope + (bend * L) / (2 * steps)) * (L / steps);
      slope += (bend * L) / steps;
    }
    const arm = armStiffness({ elasticModulus: E, secondMoment: J, length: L, force: F });
    expect(arm.deflection / deflection).toBeCloseTo(1, 6);
    const moment = bendingStress({
      bendingMoment: F * L,
      modulus: rectangleSection({ width: 0.01, height: 0.004 }).modulus,
    });
    expect(moment).toBeCloseTo((6 * F * L) / (0.01 * 0.004 ** 2), 3);
  });

  it('a heavy tip swings by itself; the arm’s own mass only slows it', () => {
    const light = armFrequency({ stiffness: 7364, tipMass: 0.59 });
    expect(light).toBeCloseTo(Math.sqrt(7364 / 0.59), 12);
    expect(armFrequency({ stiffness: 7364, tipMass: 0.59, armMass: 0.012 })).toBeLessThan(light);
    expect(() => armFrequency({ stiffness: 1, tipMass: 0 })).toThrow('swinging mass');
  });
});

describe('joints', () => {
  const square = { alongs: [-1, 1, -1, 1], acrosses: [-1, -1, 1, 1], boltDiameter: 0.1 };

  it('share a force evenly and a moment by their distance', () => {
    const none = { ...square, forceAlong: 0, forceAcross: 0, moment: 0 };
    expect(boltGroup({ ...none, forceAlong: 8 }).force).toBeCloseTo(2, 14);
    expect(boltGroup({ ...none, moment: 8 }).force).toBeCloseTo(8 / (4 * Math.SQRT2), 14);
    // Both together: worst where they point the same way.
    expect(boltGroup({ ...none, forceAlong: 8, moment: 8 }).force).toBeCloseTo(Math.hypot(3, 1), 14);
  });

  it('do not care from where their bolts are measured', () => {
    const load = { forceAlong: 3, forceAcross: -5, moment: 7 };
    const moved = {
      ...square,
      alongs: square.alongs.map((x) => x + 12),
      acrosses: square.acrosses.map((y) => y - 5),
    };
    expect(boltGroup({ ...moved, ...load }).force).toBeCloseTo(boltGroup({ ...square, ...load }).force, 12);
  });

  it('of a single bolt take no moment', () => {
    const single = { alongs: [1], acrosses: [2], boltDiameter: 0.1, forceAlong: 3, forceAcross: 4 };
    expect(boltGroup({ ...single, moment: 0 }).force).toBe(5);
    expect(() => boltGroup({ ...single, moment: 1 })).toThrow('take no moment');
  });

  it('hold by friction what their preload allows', () => {
    const preload = boltPreload({ tighteningMoment: 0.6, nutFactor: 0.2, boltDiameter: 0.003 });
    expect(preload).toBeCloseTo(1000, 10);
    expect(jointSlip({ bolts: 4, preload, friction: 0.15, radius: 0.012 })).toEqual({
      force: expect.closeTo(600, 9),
      moment: expect.closeTo(7.2, 11),
    });
  });

  it('a print carries across its layers no more than along them', () => {
    expect(printedStrength({ strength: 47e6, knockDown: 1 })).toBe(47e6);
    expect(printedStrength({ strength: 47e6, knockDown: 0.5, stressConcentration: 2, safetyFactor: 2 })).toBe(
      47e6 / 8,
    );
    expect(() => printedStrength({ strength: 47e6, knockDown: 1.2 })).toThrow('no more than 1');
    expect(() => printedStrength({ strength: 47e6, knockDown: 0.5, safetyFactor: 0.5 })).toThrow(
      'at least 1',
    );
  });
});

describe('load cases', () => {
  it('the axles carry the weight, braking or not, until one lifts', () => {
    const vehicle = { totalMass: 0.955, position: 0.16, wheelbase: 0.3, height: 0.145 };
    for (const deceleration of [0, 2, 12]) {
      const { frontLoad, rearLoad } = axleLoads({ ...vehicle, deceleration });
      expect(frontLoad + rearLoad).toBeCloseTo(0.955 * g, 12);
    }
    const lift = (g * 0.14) / 0.145;
    expect(axleLoads({ ...vehicle, deceleration: lift }).rearLoad).toBeCloseTo(0, 12);
  });

  it('a wheel that leans into the turn is loaded in its own plane', () => {
    const turn = { wheelLoad: 5, lateralAcceleration: 3, wheelRadius: 0.03 };
    expect(wheelSideLoad({ ...turn, lean: Math.atan(3 / g) }).hubMoment).toBeCloseTo(0, 14);
    const upright = wheelSideLoad(turn);
    expect(upright.acrossForce).toBe(upright.sideForce);
  });

  it('the root of the arm sees at least the weight at arm’s length', () => {
    const arm = { ballastMass: 0.59, armLength: 0.115 };
    expect(armRootMoment(arm)).toBeCloseTo(0.59 * 0.115 * g, 13);
    expect(armRootMoment({ ...arm, shockFactor: 3 })).toBeCloseTo(3 * armRootMoment(arm), 12);
    expect(armRootMoment({ ...arm, armAcceleration: 40 })).toBeCloseTo(
      armRootMoment(arm) + 0.59 * 0.115 ** 2 * 40,
      13,
    );
  });

  it('a drop on a spring turns its height into energy of the spring', () => {
    const { force, deflection, factor } = dropLoad({ mass: 0.955, height: 0.05, stiffness: 20000 });
    expect(0.5 * force * deflection).toBeCloseTo(0.955 * g * (0.05 + deflection), 12);
    expect(force / (0.955 * g)).toBeCloseTo(factor, 13);
    expect(dropLoad({ mass: 1, height: 0, stiffness: 5 }).factor).toBe(2);
  });

  it('a spring that gives as far as a stop pushes twice as hard at its end', () => {
    const spring = dropLoad({ mass: 0.955, height: 0.05, stiffness: 20000 });
    const stop = stopLoad({ mass: 0.955, height: 0.05, stopDistance: spring.deflection });
    expect(spring.force / stop.force).toBeCloseTo(2, 12);
  });

  it('a vehicle that falls over keeps its energy, and starts as its toppling time says', () => {
    const vehicle = { firstMoment: 0.138475, rollInertia: 0.0264 };
    const { stiffness, timeConstant } = toppling(vehicle);
    const { rate, energy } = fallOver({ stiffness, rollInertia: 0.0264, fromLean: 0, toLean: 0.02 });
    expect(0.5 * 0.0264 * rate ** 2).toBeCloseTo(energy, 15);
    expect(rate).toBeCloseTo(0.02 / timeConstant, 4);
    expect(() => fallOver({ stiffness, rollInertia: 1, fromLean: 0.5, toLean: 0.2 })).toThrow(
      'lean at the end',
    );
  });
});
