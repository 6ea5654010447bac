/** A map of 101 × 101 gains with its border, without and with the peak sensitivity; and the borders of 40 vehicles. */
import { balanceLoop, borderCloud, gainMap } from '../../src/control/index.ts';
import { workedController, workedHardware } from '../specimen/balance-loop.ts';
import { report } from './timing/percentiles.ts';

const loop = balanceLoop(workedHardware, workedController);
const lean = { gain: 'leanGain', from: 0, to: 3, count: 101 } as const;
const rate = { gain: 'rateGain', from: -0.1, to: 0.4, count: 101 } as const;

function time(what: string, work: () => unknown): void {
  const times = Array.from({ length: 12 }, () => {
    const started = performance.now();
    work();
    return performance.now() - started;
  });
  report(what, times.slice(2));
}

time('101 × 101 gains', () => gainMap(loop, lean, rate));
time('101 × 101 gains with peak sensitivity', () => gainMap(loop, lean, rate, { peakSensitivity: true }));
time('40 borders on 41 × 41 gains', () =>
  borderCloud(
    loop,
    { ...lean, count: 41 },
    { ...rate, count: 41 },
    { firstMoment: 0.005, rollInertia: 0.001, spinMomentum: 0.01, gimbalCentring: 0.01, delay: 0.001 },
    { draws: 40 },
  ),
);
