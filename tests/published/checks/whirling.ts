/** Whirling speeds of shafts against published examples. */
import type { MechanicsCheck } from './published-check.ts';
import { through } from './through.ts';
import { rpm } from './units.ts';

const whirling = through('shaft.whirling-of-disc', 'speed');

/** Shaft of 1 in diameter and 31 in between bearings, pounds and inches; masses are weights over 386.1. */
const POUND = 1 / 386.1;
const gearShaft = { elasticModulus: 30e6, shaftDiameter: 1, shaftBore: 0, span: 31 };

const equivalentAtCentre = (weight: number, position: number): number => {
  const alone = whirling({ ...gearShaft, discMass: weight * POUND, position });
  const onePound = whirling({ ...gearShaft, discMass: POUND, position: 15.5 });
  return (onePound / alone) ** 2;
};

export const whirlingChecks: readonly MechanicsCheck[] = [
  {
    id: 'rotor of 10 kg on a shaft of 30 mm, stiffness',
    source: 'GATE examination, question on a flexible rotor, with the solution of a question bank',
    status: 'read',
    what: 'stiffness, E 2.1e11 Pa, 500 mm between bearings, N/m',
    printed: '3206309',
    computed: () =>
      through(
        'shaft.whirling-of-disc',
        'stiffness',
      )({ discMass: 10, elasticModulus: 2.1e11, shaftDiameter: 0.03, span: 0.5, position: 0.25 }),
  },
  {
    id: 'rotor of 10 kg on a shaft of 30 mm, speed',
    source: 'GATE examination, question on a flexible rotor, with the solution of a question page',
    status: 'read',
    what: 'critical speed, Hz',
    printed: '90',
    computed: () =>
      whirling({ discMass: 10, elasticModulus: 2.1e11, shaftDiameter: 0.03, span: 0.5, position: 0.25 }) /
      (2 * Math.PI),
  },
  {
    id: 'gear of 35 lbf moved to the middle',
    source: 'Shigley’s Mechanical Engineering Design, 9th ed., example 7–5, figure 7–14',
    status: 'read',
    what: 'weight at the middle with the same critical speed, lbf',
    printed: '17.1',
    computed: () => equivalentAtCentre(35, 7),
  },
  {
    id: 'both gears by Dunkerley’s rule',
    source:
      'Shigley’s Mechanical Engineering Design, 9th ed., example 7–5; statement read, answer from memory',
    status: 'statement',
    what: 'first critical speed, rad/s',
    printed: '120',
    computed: () =>
      through(
        'shaft.dunkerley',
        'speed',
      )({
        speeds: [
          whirling({ ...gearShaft, discMass: 35 * POUND, position: 7 }),
          whirling({ ...gearShaft, discMass: 55 * POUND, position: 20 }),
        ],
      }),
  },
  {
    id: 'shaft of 25 mm and 600 mm by itself',
    source:
      'Shigley’s Mechanical Engineering Design, problem 7–28 with E 207 GPa and 76.5 kN/m³; statement read, answer from memory',
    status: 'statement',
    what: 'lowest critical speed, rad/s',
    printed: '883',
    computed: () =>
      through(
        'shaft.whirling-of-shaft',
        'speed',
      )({ elasticModulus: 207e9, shaftDiameter: 0.025, span: 0.6, density: 76_500 / 9.81 }),
  },
  {
    id: 'stepped shaft with a flywheel of 400 N, by Rayleigh',
    source:
      'a worked example on a stepped shaft (E 200 GPa, I 0.3e-6 m⁴, 1 m): deflection 3 W L³/(256 E I) read there, speed by independent computation',
    status: 'independent',
    what: 'critical speed from that deflection, g 9.81, rev/min',
    printed: '3384',
    computed: () => {
      const deflection = (3 * 400) / (256 * 200e9 * 0.3e-6);
      const speed = through('shaft.rayleigh', 'speed')({ masses: [400 / 9.81], deflections: [deflection] });
      return (speed * Math.sqrt(9.81 / 9.80665)) / rpm(1);
    },
  },
];
