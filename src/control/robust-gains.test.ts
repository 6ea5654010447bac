import { describe, expect, it } from 'vitest';
import { repeatable, workedController, workedHardware } from '../../tests/specimen/balance-loop.ts';
import { balanceLoop, respond, restingState } from './balance-loop.ts';
import { commandNoise } from './command-noise.ts';
import { loopMargins } from './margins.ts';
import { climb } from './nelder-mead.ts';
import { type GainLimits, mostRobustGains } from './robust-gains.ts';

const loop = balanceLoop(workedHardware, workedController);
const range: GainLimits['range'] = { leanGain: [0.2, 3], rateGain: [-0.1, 0.3] };
const found = mostRobustGains(loop, { range });

/** The smallest margin by what is wanted when nothing is said. */
function robustnessOf(gains: { leanGain: number; rateGain: number; gimbalGain: number }): number {
  const margins = loopMargins(balanceLoop(workedHardware, { ...workedController, ...gains }));
  if (!margins.stable) return -1;
  return Math.min(
    Math.log(margins.gainMarginUp.factor) / Math.log(2),
    -Math.log(margins.gainMarginDown.factor) / Math.log(2),
    margins.delayMargin.delay / (0.018 + 0.0025),
    2 / margins.peakSensitivity.peak,
  );
}

describe('the most robust gains', () => {
  it('are as robust as they say, and more so than the present ones', () => {
    expect(found?.robustness).toBeCloseTo(robustnessOf(found?.gains ?? workedController), 9);
    expect(found?.robustness).toBeGreaterThan(robustnessOf(workedController) + 0.05);
    expect(found?.gains.gimbalGain).toBe(workedController.gimbalGain);
    expect(found?.atLimit).toEqual([]);
  });

  it('are beaten by none of 400 others within the limits, wide and near', () => {
    const random = repeatable(21);
    const best = found?.robustness ?? Number.NaN;
    const { leanGain = 0, rateGain = 0, gimbalGain = 0 } = found?.gains ?? {};
    for (let i = 0; i < 400; i++) {
      const near = i % 2 === 0;
      const other = near
        ? {
            leanGain: leanGain * (0.9 + 0.2 * random()),
            rateGain: rateGain * (0.7 + 0.6 * random()),
            gimbalGain,
          }
        : { leanGain: 0.2 + 2.8 * random(), rateGain: -0.1 + 0.4 * random(), gimbalGain };
      expect(robustnessOf(other)).toBeLessThan(best * 1.003);
    }
  });

  it('come with the response that they lead to', () => {
    const chosen = balanceLoop(workedHardware, { ...workedController, ...found?.gains });
    const motion = respond(chosen, restingState(chosen.plant, { lean: 1, 'lagged lean': 1 }), 20);
    expect(found?.response[20]).toBeCloseTo(motion[20]?.[0] ?? Number.NaN, 12);
    expect(Math.abs(found?.response.at(-1) ?? 1)).toBeLessThan(0.1);
  });

  it('are the same every time', () => {
    expect(mostRobustGains(loop, { range })?.gains).toEqual(found?.gains);
  });

  it('keep the command within its limits, and pay for it', () => {
    const noise = { lean: 0.001, rate: 0.01, largest: 0.0012 };
    const quiet = mostRobustGains(loop, { range, noise });
    const chosen = balanceLoop(workedHardware, { ...workedController, ...quiet?.gains });
    const free = balanceLoop(workedHardware, { ...workedController, ...found?.gains });
    expect(commandNoise(free, noise)).toBeGreaterThan(0.0012);
    expect(commandNoise(chosen, noise)).toBeLessThanOrEqual(0.0012);
    expect(quiet?.robustness).toBeLessThan(found?.robustness ?? 0);

    const command = { lean: 0.05, largest: 0.06 };
    const short = mostRobustGains(loop, { range, command });
    const held = balanceLoop(workedHardware, { ...workedController, ...short?.gains });
    const commands = respond(held, restingState(held.plant, { lean: 0.05, 'lagged lean': 0.05 }), 400).map(
      (state) => Math.abs(state.reduce((sum, x, i) => sum + x * (held.feedback[i] ?? 0), 0)),
    );
    expect(Math.max(...commands)).toBeLessThanOrEqual(0.06);
  });

  it('say which gain stands at its limit', () => {
    const narrow = mostRobustGains(loop, { range: { leanGain: [0.2, 0.9], rateGain: [0, 0.1] } });
    expect(narrow?.atLimit).toEqual(['leanGain']);
  });

  it('are found in a sliver that a search at random walks past, and show what it is worth', () => {
    const stopped = balanceLoop({ ...workedHardware, spinMomentum: 0 }, workedController);
    const edge = mostRobustGains(stopped, { range: { leanGain: [0.2, 8], rateGain: [0, 1.5] } });
    expect(edge?.gains.leanGain).toBeGreaterThan(0.547);
    expect(edge?.gains.leanGain).toBeLessThan(0.648);
    expect(edge?.robustness).toBeLessThan(0.15);
    expect(edge?.margins.peakSensitivity.peak).toBeGreaterThan(15);
  });

  it('are none where nothing holds', () => {
    const late = balanceLoop({ ...workedHardware, spinMomentum: 0 }, { ...workedController, delay: 0.2 });
    expect(mostRobustGains(late, { range: { leanGain: [0.2, 8], rateGain: [0, 1.5] } })).toBeUndefined();
  });

  it.each([
    ['no gain that may change', { range: {} }, {}, 'number of gains that may change is 0'],
    [
      'limits the wrong way round',
      { range: { leanGain: [2, 1] } },
      {},
      'highest lean gain is 1, but it has to be more than the lowest',
    ],
    ['a travel of nothing', { range, command: { lean: 0.1, largest: 0 } }, {}, 'largest command is 0'],
    [
      'no margin at all',
      { range },
      { gainMargin: 1 },
      'gain margin wanted is 1, but it has to be more than 1',
    ],
    ['a delay margin of nothing', { range }, { delayMargin: 0 }, 'delay margin wanted is 0 s'],
  ] as const)('refuse %s', (_, limits, wanted, message) => {
    expect(() => mostRobustGains(loop, limits as GainLimits, wanted)).toThrow(message);
  });
});

describe('a climb', () => {
  const options = { size: 0.2, tolerance: 1e-7, mostEvaluations: 2000 };

  it('finds the top of a crooked ridge (H. H. Rosenbrock 1960: (1, 1))', () => {
    const ridge = (p: Float64Array): number => {
      const [x, y] = [4 * (p[0] ?? 0) - 2, 4 * (p[1] ?? 0) - 2];
      return -(100 * (y - x * x) ** 2 + (1 - x) ** 2);
    };
    const { point, evaluations } = climb(ridge, Float64Array.of(0.2, 0.75), options);
    expect(4 * (point[0] ?? 0) - 2).toBeCloseTo(1, 4);
    expect(4 * (point[1] ?? 0) - 2).toBeCloseTo(1, 4);
    expect(evaluations).toBeLessThan(400);
  });

  it('stays in its box, and ends when it has climbed long enough', () => {
    const slope = (p: Float64Array): number => (p[0] ?? 0) + 2 * (p[1] ?? 0);
    const { point, value } = climb(slope, Float64Array.of(0.5, 0.5), options);
    expect(value).toBeCloseTo(3, 5);
    expect(Math.max(...point)).toBeLessThanOrEqual(1);
    expect(
      climb(slope, Float64Array.of(0.5, 0.5), { ...options, mostEvaluations: 10 }).evaluations,
    ).toBeLessThan(16);
  });
});
