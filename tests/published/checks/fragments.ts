/** Energies of the pieces of a rotor against independent figures: nobody publishes them for rotors of this size. */
import type { MechanicsCheck } from './published-check.ts';
import { through } from './through.ts';
import { rpm } from './units.ts';

const DERIVED = 'independent computation from radii, mass and speed by elementary mechanics';
const fragmentShare = through('rotor.fragment-energy', 'share');
const flightEnergy = through('rotor.fragment-energy', 'flightEnergy');

const burst = (outer: number, bore: number, mass: number, speed: number, pieces = 3) => ({
  mass,
  outerDiameter: (2 * outer) / 1000,
  boreDiameter: (2 * bore) / 1000,
  speed: rpm(speed),
  pieces,
});

const THIN = 1 - 1e-9;

export const fragmentChecks: readonly MechanicsCheck[] = [
  ...(
    [
      ['2 pieces of a disc', 0, 2, '0.3603'],
      ['3 pieces of a disc', 0, 3, '0.6079'],
      ['4 pieces of a disc', 0, 4, '0.7205'],
      ['6 pieces of a disc', 0, 6, '0.8106'],
      ['2 pieces of a thin ring', 50 * THIN, 2, '0.4053'],
      ['3 pieces of a thin ring', 50 * THIN, 3, '0.6839'],
      ['4 pieces of a thin ring', 50 * THIN, 4, '0.8106'],
      ['6 pieces of a thin ring', 50 * THIN, 6, '0.9119'],
    ] as const
  ).map(
    ([id, bore, pieces, printed]): MechanicsCheck => ({
      id: `flight share, ${id}`,
      source: DERIVED,
      status: 'independent',
      what: 'share of the energy of a piece that is flight',
      printed,
      computed: () => fragmentShare(burst(50, bore, 0.3, 10_000, pieces)),
    }),
  ),
  ...(
    [
      ['ring 0.30 kg, 50/40 mm, 10 000 rev/min', burst(50, 40, 0.3, 10_000), '77', '17'],
      ['disc 0.30 kg, 50 mm, 10 000 rev/min', burst(50, 0, 0.3, 10_000), '42', '9'],
      ['ring 0.30 kg, 40/30 mm, 20 000 rev/min', burst(40, 30, 0.3, 20_000), '186', '42'],
      ['ring 0.50 kg, 60/50 mm, 20 000 rev/min', burst(60, 50, 0.5, 20_000), '760', '173'],
    ] as const
  ).flatMap(([id, rotor, third, shields]): MechanicsCheck[] => [
    {
      id: `${id}: a third`,
      source: DERIVED,
      status: 'independent',
      what: 'energy of a third in flight, J',
      printed: third,
      computed: () => flightEnergy(rotor),
    },
    {
      id: `${id}: beside a face shield`,
      source: `${DERIVED}; ball test of ANSI Z87.1-2003`,
      status: 'independent',
      what: 'energy of a third over 4.4 J',
      printed: shields,
      computed: () => through('rotor.fragment-caution', 'ratio')({ flightEnergy: flightEnergy(rotor) }),
    },
  ]),
];
