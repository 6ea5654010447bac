import { describe, expect, it } from 'vitest';
import { repeatable, someLoop, workedController, workedHardware } from '../../tests/specimen/balance-loop.ts';
import { balanceLoop } from './balance-loop.ts';
import { closedLoopPoles } from './closed-loop-poles.ts';
import { closedLoopModes, openLoopModes } from './mode-names.ts';

const loop = balanceLoop(workedHardware, workedController);
const names = (modes: readonly { name: string }[]): string[] => modes.map(({ name }) => name);

describe('the names of modes', () => {
  it('of the vehicle alone: it topples slowly, wobbles, and its drive and sensors lag', () => {
    const modes = openLoopModes(loop);
    expect(names(modes)).toEqual(['slow topple', 'slow topple', 'nutation', 'actuator', 'sensor', 'sensor']);
    expect(modes[0]?.s.re).toBeCloseTo(1.560451891, 8);
    expect(modes[2]?.s.im).toBeCloseTo(61.738274535, 6);
    expect(modes[0]?.text).toBe(
      'Slow toppling, which the rotor leaves of the fall: does not swing, three times as large every 0.704 s.',
    );
    expect(modes[2]?.text).toBe(
      'Nutation, the wobble of gimbal and vehicle against each other: swings 9.83 times a second, down to a third in 0.39 s.',
    );
  });

  it('of the closed loop begin with the slow toppling that the loop now holds', () => {
    const modes = closedLoopModes(loop);
    expect(modes[0]?.name).toBe('slow topple');
    expect(modes[1]?.name).toBe('nutation');
    expect(names(modes)).toContain('actuator');
    for (const { shares } of modes) {
      expect(Object.values(shares).reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
    }
  });

  it('are plain toppling without a rotor', () => {
    const modes = openLoopModes(balanceLoop({ ...workedHardware, spinMomentum: 0 }, workedController));
    expect(names(modes)).toEqual(['topple', 'topple', 'actuator', 'sensor', 'sensor']);
    const [fall, rise] = modes
      .map(({ s }) => s.re)
      .filter((re) => Math.abs(Math.abs(re) - 1 / 0.137152698) < 1e-6);
    expect(fall).toBeCloseTo(-(rise ?? 0), 6);
  });

  it('tell of the neutral mode of a free gimbal instead of a pole on the limit', () => {
    const free = balanceLoop({ ...workedHardware, gimbalCentring: 0 }, workedController);
    const last = openLoopModes(free).at(-1);
    expect(last?.name).toBe('neutral');
    expect(last?.text).toContain('The gimbal has no centring');
  });

  it('are there once for every pole and pair, for any loop', () => {
    const random = repeatable(2);
    for (let i = 0; i < 60; i++) {
      const { hardware, controller } = someLoop(random);
      const some = balanceLoop(hardware, controller);
      const modes = closedLoopModes(some).filter(({ name }) => name !== 'neutral');
      const poles = closedLoopPoles(some, controller.sampleTime).modes.filter(({ z }) => z.im >= 0);
      expect(modes.length).toBe(poles.length);
      for (const { shares, text } of modes) {
        for (const share of Object.values(shares)) expect(Number.isFinite(share)).toBe(true);
        expect(text).not.toContain('NaN');
      }
    }
  });
});
