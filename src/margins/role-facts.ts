/** Masses of single parts that the sums know by what the part does, not by its row in the mass table. */
import type { FigureSpec } from './figure.ts';

/** The mass of the part that plays a role, under a name of its own. */
export const roleFacts: readonly (FigureSpec & { readonly role: 'ballast' | 'rotor' })[] = [
  {
    name: 'ballast_mass',
    title: 'mass of the ballast',
    unit: 'kg',
    display: 'kg',
    group: 'ballast',
    role: 'ballast',
  },
  {
    name: 'rotor_weighed_mass',
    title: 'mass of the rotor as weighed',
    unit: 'kg',
    display: 'kg',
    group: 'rotor',
    role: 'rotor',
  },
];
