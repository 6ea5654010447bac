/** The one constant that every mass in the notebook is turned into a weight with. */

/**
 * Standard acceleration of free fall, g, m/s²: exact by definition.
 *
 * Source: 3rd General Conference on Weights and Measures (CGPM), 1901; ISO 80000-3:2019. The local value differs
 * by less than 0.3 % anywhere on the ground; moments and their limits differ with it, leans do not.
 */
export const standardGravity = 9.80665;
