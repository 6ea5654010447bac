import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { materials } from './materials.ts';
import { rimSpeed, rotorEnergy, rotorInertia, spinMomentum } from './rotor.ts';
import { judgedSpeed, runawaySpeed } from './rotor-speed.ts';
import { rotorPeakStress } from './rotor-stress.ts';

const ring = { outerDiameters: [0.09], boreDiameters: [0.07], thicknesses: [0.02], density: 8490 };
const steel = { density: 7850, poissonRatio: 0.3, speed: 1000 };
const stress = (diameter: number, bore: number, rest = steel): number =>
  rotorPeakStress({ outerDiameters: [diameter], boreDiameters: [bore], ...rest });

describe('inertia of the rotor', () => {
  it('is the same for a disc sliced across its axis', () => {
    const whole = rotorInertia(ring);
    const sliced = rotorInertia({
      outerDiameters: [0.09, 0.09],
      boreDiameters: [0.07, 0.07],
      thicknesses: [0.015, 0.005],
      density: 8490,
    });
    expect(sliced.inertia).toBeCloseTo(whole.inertia, 15);
    expect(sliced.mass).toBeCloseTo(whole.mass, 14);
  });

  it('is the same for a solid disc cut into a ring and its core', () => {
    const solid = rotorInertia({
      outerDiameters: [0.1],
      boreDiameters: [0],
      thicknesses: [0.02],
      density: 7850,
    });
    const cut = rotorInertia({
      outerDiameters: [0.1, 0.06],
      boreDiameters: [0.06, 0],
      thicknesses: [0.02, 0.02],
      density: 7850,
    });
    expect(cut.inertia).toBeCloseTo(solid.inertia, 15);
    expect(cut.mass).toBeCloseTo(solid.mass, 13);
  });

  it('lies between that of a disc and that of a hoop of the same mass', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 0.99, noNaN: true }), (share) => {
        const { inertia, mass } = rotorInertia({ ...ring, boreDiameters: [0.09 * share] });
        const hoop = mass * 0.045 ** 2;
        expect(inertia).toBeGreaterThanOrEqual(0.4999999 * hoop);
        expect(inertia).toBeLessThan(hoop);
      }),
    );
  });

  it('a section of no thickness adds nothing', () => {
    const { inertia } = rotorInertia({
      outerDiameters: [0.09, 0.2],
      boreDiameters: [0.07, 0],
      thicknesses: [0.02, 0],
      density: 8490,
    });
    expect(inertia).toBe(rotorInertia(ring).inertia);
  });

  it('refuses a bore that leaves nothing, no sections, and lists that do not match', () => {
    expect(() => rotorInertia({ ...ring, boreDiameters: [0.09] })).toThrow(
      'bore diameter of section 1 is 0.09 m, but it has to be less than the outer diameter, 0.09 m',
    );
    expect(() =>
      rotorInertia({ outerDiameters: [], boreDiameters: [], thicknesses: [], density: 7850 }),
    ).toThrow('a rotor has at least one');
    expect(() => rotorInertia({ ...ring, thicknesses: [0.02, 0.02] })).toThrow(
      'number of figures for thickness',
    );
    expect(() => rotorInertia({ ...ring, outerDiameters: [0] })).toThrow('outer diameter of section 1');
    expect(() => rotorInertia({ ...ring, density: 0 })).toThrow('density of the rotor');
  });
});

describe('momentum, energy and rim', () => {
  it('energy is half the momentum times the speed', () => {
    const rotor = { inertia: 5e-4, speed: 890 };
    expect(rotorEnergy(rotor)).toBeCloseTo(0.5 * spinMomentum(rotor) * rotor.speed, 10);
  });

  it('the rim is that of the largest section, wherever it stands in the list', () => {
    expect(rimSpeed({ outerDiameters: [0.03, 0.09, 0.05], speed: 100 })).toBeCloseTo(4.5, 14);
  });

  it('a rotor at rest has neither momentum nor energy', () => {
    expect(spinMomentum({ inertia: 5e-4, speed: 0 })).toBe(0);
    expect(rotorEnergy({ inertia: 5e-4, speed: 0 })).toBe(0);
    expect(() => spinMomentum({ inertia: 5e-4, speed: -1 })).toThrow('rotor speed');
  });
});

describe('speed at which the rotor is judged', () => {
  it('is the larger of working and runaway speed, times the factor', () => {
    expect(judgedSpeed({ largestSpeed: 900, runawaySpeed: 1200, overspeedFactor: 1.2 })).toBeCloseTo(
      1440,
      10,
    );
    expect(judgedSpeed({ largestSpeed: 900, runawaySpeed: 700, overspeedFactor: 1.2 })).toBeCloseTo(1080, 10);
    expect(judgedSpeed({ largestSpeed: 900, overspeedFactor: 1 })).toBe(900);
  });

  it('is never below the rotor’s own speed', () => {
    expect(() => judgedSpeed({ largestSpeed: 900, overspeedFactor: 0.9 })).toThrow(
      'overspeed factor is 0.9, but it has to be at least 1',
    );
  });

  it('cells are counted in whole numbers', () => {
    expect(() => runawaySpeed({ speedConstant: 94, cells: 2.5, cellFullVoltage: 4.2 })).toThrow(
      'whole number',
    );
    expect(() => runawaySpeed({ speedConstant: 94, cells: 0, cellFullVoltage: 4.2 })).toThrow('at least 1');
  });
});

/** Stresses of a bored disc at a radius, Hearn, Mechanics of Materials 2, ch. 4, from the two Lamé constants. */
function hearn(r: number, b: number, a: number): { radial: number; hoop: number } {
  const { density, poissonRatio: nu, speed } = steel;
  const load = density * speed ** 2;
  // σ_r = A − B/r² − (3+ν)/8 ρω²r² vanishes at bore and rim
  const B = (((3 + nu) / 8) * load * (b ** 2 - a ** 2)) / (1 / a ** 2 - 1 / b ** 2);
  const A = B / a ** 2 + ((3 + nu) / 8) * load * a ** 2;
  return {
    radial: A - B / r ** 2 - ((3 + nu) / 8) * load * r ** 2,
    hoop: A + B / r ** 2 - ((1 + 3 * nu) / 8) * load * r ** 2,
  };
}

describe('peak stress', () => {
  it('is the largest stress anywhere in the disc', () => {
    const [b, a] = [0.05, 0.01];
    const radii = Array.from({ length: 401 }, (_, i) => a + ((b - a) * i) / 400);
    const all = radii.flatMap((r) => Object.values(hearn(r, b, a)));
    expect(hearn(a, b, a).radial).toBeCloseTo(0, 3);
    expect(hearn(b, b, a).radial).toBeCloseTo(0, 3);
    expect(Math.max(...all) / stress(2 * b, 2 * a)).toBeCloseTo(1, 12);
  });

  it('is more than the mean over a diametral plane, ρω²(b² + ab + a²)/3, that statics alone asks for', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 0.999, noNaN: true }), (share) => {
        const [b, a] = [0.05, 0.05 * share];
        const mean = (steel.density * steel.speed ** 2 * (b * b + a * b + a * a)) / 3;
        expect(stress(2 * b, 2 * a)).toBeGreaterThan(mean);
      }),
    );
  });

  it('doubles with the smallest bore', () => {
    expect(stress(0.1, 1e-9) / stress(0.1, 0)).toBeCloseTo(2, 12);
  });

  it('tends to ρ v² in a thin ring, whatever the Poisson ratio', () => {
    const rim = 7850 * (0.05 * 1000) ** 2;
    for (const poissonRatio of [0, 0.3, 0.5]) {
      expect(stress(0.1, 0.1 * (1 - 1e-9), { ...steel, poissonRatio }) / rim).toBeCloseTo(1, 8);
    }
  });

  it('equals the form used for grinding wheels', () => {
    const [b, a, nu] = [0.125, 0.01, 0.24];
    const v = b * 2000;
    const malkin = ((3320 * v * v * (3 + nu)) / 4) * (1 + ((1 - nu) / (3 + nu)) * (a / b) ** 2);
    expect(stress(2 * b, 2 * a, { density: 3320, poissonRatio: nu, speed: 2000 }) / malkin).toBeCloseTo(
      1,
      14,
    );
  });

  it('grows with the square of the speed', () => {
    const faster = stress(0.1, 0.01, { ...steel, speed: 1200 });
    expect(faster / stress(0.1, 0.01)).toBeCloseTo(1.44, 12);
  });

  it('is that of the worst section: a small bored hub may beat a larger solid disc', () => {
    const both = rotorPeakStress({ outerDiameters: [0.09, 0.08], boreDiameters: [0, 0.005], ...steel });
    expect(both).toBe(stress(0.08, 0.005));
    expect(both).toBeGreaterThan(stress(0.09, 0));
  });

  it('refuses a Poisson ratio outside 0 to 0.5', () => {
    expect(() => stress(0.1, 0, { ...steel, poissonRatio: 0.51 })).toThrow('Poisson ratio is 0.51');
    expect(() => stress(0.1, 0, { ...steel, poissonRatio: -0.1 })).toThrow('between 0 and 0.5');
  });
});

describe('materials to start from', () => {
  it.each(materials)('$name has figures a metal can have, and says where they come from', (material) => {
    expect(material.density).toBeGreaterThan(2600);
    expect(material.density).toBeLessThan(9000);
    expect(material.yieldStrength).toBeGreaterThanOrEqual(100e6);
    expect(material.yieldStrength).toBeLessThanOrEqual(310e6);
    expect(material.poissonRatio).toBeGreaterThan(0.25);
    expect(material.poissonRatio).toBeLessThanOrEqual(0.36);
    expect(material.source).not.toBe('');
    expect(material.note).toMatch(/\.$/);
  });

  it('have different names', () => {
    expect(new Set(materials.map(({ name }) => name)).size).toBe(materials.length);
  });
});
