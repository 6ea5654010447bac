import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Calculation, DomainError, mechanicsCalculations } from './index.ts';

type Inputs = Calculation['example'];

const ids = mechanicsCalculations.map(({ id }) => id);
const withPartials = mechanicsCalculations.filter(({ partials }) => partials !== undefined);

/** Computes, and says `refused` where the door is closed; any other error is a bug and goes through. */
function outcome(calculation: Calculation, inputs: Inputs): Readonly<Record<string, number>> | 'refused' {
  try {
    return calculation.compute(inputs);
  } catch (error) {
    if (error instanceof DomainError) return 'refused';
    throw error;
  }
}

/** The example with one figure of one input replaced; in a list, the first. */
function replaced(inputs: Inputs, name: string, value: number): Inputs {
  const old = inputs[name];
  return { ...inputs, [name]: Array.isArray(old) ? old.with(0, value) : value };
}

function without(inputs: Inputs, name: string): Inputs {
  const { [name]: _, ...rest } = inputs;
  return rest;
}

describe('the registry', () => {
  it('holds these calculations and no others', () => {
    expect(ids.toSorted()).toEqual([
      'actuator.arm-holding-moment',
      'actuator.arm-moving-moment',
      'actuator.largest-power',
      'actuator.moment-at-speed',
      'actuator.sine-demand',
      'actuator.slide-holding-force',
      'actuator.slide-moving-force',
      'actuator.speed-at-load',
      'actuator.stop-to-stop',
      'actuator.stroke-demand',
      'arm.frequency',
      'arm.stiffness',
      'ballast.arm-moment-rate',
      'ballast.arm-position',
      'ballast.cross-slope',
      'ballast.largest-lean',
      'ballast.largest-lean-by-hand',
      'ballast.largest-lean-over-travel',
      'ballast.lateral-limit',
      'ballast.payload-offset',
      'ballast.reaction-moment',
      'ballast.righting-moment',
      'ballast.slide-moment-rate',
      'ballast.slide-position',
      'ballast.tilted-arm-position',
      'ballast.turn-acceleration',
      'ballast.turn-radius',
      'ballast.wrong-way-zero',
      'bar.bending',
      'bar.rectangle',
      'bar.tube',
      'body.box-roll-inertia',
      'body.cone-across-axis',
      'body.cone-along-axis',
      'body.cylinder-across-axis',
      'body.cylinder-along-axis',
      'body.rod-across-axis',
      'body.sphere',
      'body.tube-across-axis',
      'body.tube-along-axis',
      'drive.belt',
      'drive.lead-screw',
      'drive.screw-thrust',
      'fuse.shares',
      'gear.best-ratio',
      'gear.reflection',
      'gyro.bearing-load',
      'gyro.centred-toppling',
      'gyro.couple',
      'gyro.driven-moment',
      'gyro.free-wobble',
      'gyro.gimbal-reaction',
      'gyro.heavy-top',
      'gyro.momentum-reserve',
      'gyro.nutation',
      'gyro.peak-couple',
      'gyro.roll-damping',
      'gyro.slow-toppling',
      'gyro.stabilising-momentum',
      'gyro.tilted-rotor',
      'gyro.time-gain',
      'gyro.time-to-saturation',
      'gyro.time-to-stop',
      'gyro.time-to-stop-from-lean',
      'gyro.trim-moment',
      'gyro.yaw-reaction',
      'inertia.about-axis',
      'inertia.parallel-axes',
      'inertia.parallel-axis',
      'inertia.principal',
      'inertia.radius-of-gyration',
      'inertia.tensor',
      'inertia.turned-axes',
      'joint.bolt-group',
      'joint.bolt-preload',
      'joint.printed-strength',
      'joint.slip',
      'load.arm-root',
      'load.axles',
      'load.drop',
      'load.fall-over',
      'load.stop',
      'load.wheel-side',
      'mass.centre-of-gravity',
      'mass.first-moment',
      'mass.roll-inertia',
      'mass.toppling',
      'mass.total',
      'motor.at-load',
      'motor.at-speed',
      'motor.no-load-test',
      'motor.stall',
      'motor.torque-constant',
      'pack.c-rate',
      'pack.duty',
      'pack.energy',
      'pack.resistance',
      'pack.run-time',
      'pack.sag',
      'pack.voltage',
      'power.converter',
      'power.inrush',
      'power.pre-charge',
      'power.stall',
      'rotor.alias',
      'rotor.balance-grade',
      'rotor.burst-estimate',
      'rotor.coast-down-fit',
      'rotor.coast-down-time',
      'rotor.correction-mass',
      'rotor.disc-stress',
      'rotor.drag',
      'rotor.energy',
      'rotor.fragment-caution',
      'rotor.fragment-energy',
      'rotor.inertia',
      'rotor.judged-speed',
      'rotor.mean-hoop-stress',
      'rotor.momentum',
      'rotor.peak-stress',
      'rotor.permissible-unbalance',
      'rotor.rim-speed',
      'rotor.ring-stress',
      'rotor.runaway-speed',
      'rotor.seizure',
      'rotor.spin-up',
      'rotor.spin-up-at-power',
      'rotor.spin-up-by-motor',
      'rotor.unbalance-force',
      'rotor.yield-speed',
      'shaft.dunkerley',
      'shaft.rayleigh',
      'shaft.required-diameter',
      'shaft.stress',
      'shaft.torsion',
      'shaft.twist',
      'shaft.whirling-of-disc',
      'shaft.whirling-of-shaft',
      'shaft.whirling-overhung',
      'stress.plane',
      'swing.bifilar',
      'swing.damping',
      'swing.distance',
      'swing.inertia',
      'swing.period',
      'swing.planar-tensor',
      'swing.small-swing-period',
      'swing.torsion',
      'swing.torsion-stiffness',
      'swing.trifilar',
      'swing.two-pivots',
      'swing.undamped-period',
      'turn.friction-needed',
      'turn.lean',
      'turn.lean-with-momentum',
      'turn.slide-speed',
      'turn.tip-over',
      'turn.tyre-lean',
      'turn.wheel-momentum',
      'weighing.balance-edge',
      'weighing.board',
      'weighing.hang-lines',
      'weighing.inclining',
      'weighing.left-and-right',
      'weighing.missing-mass',
      'weighing.raised-end',
      'weighing.two-axles',
      'wheel.reserve',
      'wheel.reserve-under-moment',
      'wire.drop',
      'wire.gauge',
    ]);
  });

  it.each(mechanicsCalculations)(
    '$id says what it is, where it holds and where it comes from',
    (calculation) => {
      expect(calculation.id).toMatch(/^[a-z]+\.[a-z]+(-[a-z]+)*$/);
      expect(calculation.title).not.toBe('');
      expect(calculation.validity).toMatch(/\.$/);
      expect(calculation.source).not.toBe('');
      for (const related of calculation.related) {
        expect(ids).toContain(related);
        expect(related).not.toBe(calculation.id);
      }
      for (const spec of [...Object.values(calculation.inputs), ...Object.values(calculation.outputs)]) {
        expect(spec.unit).not.toBe('');
        expect(spec.meaning).not.toBe('');
      }
    },
  );

  it.each(mechanicsCalculations)('every symbol of $id stands in its equation', (calculation) => {
    const specs = { ...calculation.inputs, ...calculation.outputs };
    // The direction of the arm decides where the worst case lies, not how large it is.
    if (calculation.id === 'actuator.arm-holding-moment') delete (specs as Record<string, unknown>).direction;
    for (const { symbol } of Object.values(specs)) {
      // An index may carry a power as well: D_j^4.
      expect(calculation.equation.replaceAll(' ', '')).toContain(symbol.replaceAll(' ', ''));
    }
  });

  it.each(mechanicsCalculations)(
    'the example of $id gives every output as a finite number',
    (calculation) => {
      const outputs = calculation.compute(calculation.example);
      expect(Object.keys(outputs).toSorted()).toEqual(Object.keys(calculation.outputs).toSorted());
      for (const value of Object.values(outputs)) expect(value).toSatisfy(Number.isFinite);
    },
  );
});

describe('unfit inputs', () => {
  const cases = mechanicsCalculations.flatMap((calculation) =>
    Object.keys(calculation.inputs).map((input) => ({ id: calculation.id, input, calculation })),
  );

  it.each(cases)(
    '$id refuses $input where it is no number, and names what is wrong',
    ({ calculation, input }) => {
      for (const value of [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]) {
        expect(() => calculation.compute(replaced(calculation.example, input, value))).toThrow(DomainError);
      }
      const spec = calculation.inputs[input];
      const wrongKind = spec?.list ? 1 : [1];
      expect(() => calculation.compute({ ...calculation.example, [input]: wrongKind })).toThrow(DomainError);
    },
  );

  it.each(cases)(
    '$id takes the default of $input where it is missing, or refuses',
    ({ calculation, input }) => {
      const spec = calculation.inputs[input];
      const missing = without(calculation.example, input);
      if (spec?.default === undefined) {
        expect(() => calculation.compute(missing)).toThrow(spec?.meaning);
      } else {
        expect(calculation.compute(missing)).toEqual(
          calculation.compute({ ...calculation.example, [input]: spec.default }),
        );
      }
    },
  );

  it.each(cases)(
    '$id gives finite figures for $input at nought or below, or refuses',
    ({ calculation, input }) => {
      for (const value of [0, -0, -1e-9, -1, Number.MIN_VALUE, 1e-300, 1e300]) {
        const result = outcome(calculation, replaced(calculation.example, input, value));
        if (result === 'refused') continue;
        for (const figure of Object.values(result)) expect(figure).toSatisfy(Number.isFinite);
      }
    },
  );

  it('no inputs whatever make a figure that is not a number', () => {
    const figure = fc.oneof(
      fc.double({ min: -2, max: 2, noNaN: true }),
      fc.double(),
      fc.constantFrom(0, -0, 1, -1, Math.PI / 2, Number.NaN, 1e308, Number.MIN_VALUE),
    );
    fc.assert(
      fc.property(
        fc.constantFrom(...mechanicsCalculations),
        fc.array(fc.array(figure, { minLength: 1, maxLength: 4 }), { minLength: 8, maxLength: 8 }),
        (calculation, figures) => {
          const names = Object.entries(calculation.inputs);
          const inputs = Object.fromEntries(
            names.map(([name, spec], i) => [name, spec.list ? (figures[i] ?? []) : (figures[i]?.[0] ?? 0)]),
          );
          const result = outcome(calculation, inputs);
          return result === 'refused' || Object.values(result).every(Number.isFinite);
        },
      ),
      { numRuns: 4000 },
    );
  });
});

describe('exact derivatives', () => {
  /** Central difference; the step suits second-order error against rounding at these magnitudes. */
  function difference(
    calculation: Calculation,
    inputs: Inputs,
    output: string,
    name: string,
    i: number,
  ): number {
    const list = inputs[name] as readonly number[];
    const at = list[i] ?? 0;
    const step = 1e-5 * Math.max(Math.abs(at), 1);
    const high = calculation.compute({ ...inputs, [name]: list.with(i, at + step) })[output] ?? 0;
    const low = calculation.compute({ ...inputs, [name]: list.with(i, at - step) })[output] ?? 0;
    return (high - low) / (2 * step);
  }

  it('are given by the sums over the mass table', () => {
    expect(withPartials.map(({ id }) => id)).toEqual([
      'mass.total',
      'mass.first-moment',
      'mass.centre-of-gravity',
      'mass.roll-inertia',
    ]);
  });

  it.each(withPartials)('of $id agree with central differences everywhere', (calculation) => {
    const part = fc.array(fc.double({ min: 0.1, max: 5, noNaN: true }), { minLength: 4, maxLength: 4 });
    fc.assert(
      fc.property(fc.array(part, { minLength: 1, maxLength: 12 }), (parts) => {
        const names = Object.keys(calculation.inputs);
        const inputs = Object.fromEntries(names.map((name, k) => [name, parts.map((part) => part[k] ?? 1)]));
        const slopes = calculation.partials?.(inputs) ?? {};
        for (const output of Object.keys(calculation.outputs)) {
          for (const name of names) {
            const exact = slopes[output]?.[name] as readonly number[];
            expect(exact).toHaveLength(parts.length);
            exact.forEach((slope, i) => {
              expect(Math.abs(slope - difference(calculation, inputs, output, name, i))).toBeLessThan(
                1e-7 * (1 + Math.abs(slope)),
              );
            });
          }
        }
      }),
      { numRuns: 50 },
    );
  });
});
