/**
 * (z I − Φ)⁻¹ from the left and from the right at one point of the unit circle after another: the inner loop of
 * every margin, so it works in place on arrays that are made once.
 */

import { type Complex, type ComplexVector, complexVector, onCircle } from './complex.ts';
import type { SampledPlant } from './discretise.ts';

export interface Resolvent {
  /** Factorises z I − Φ at z = e^{jθ}; false where it is singular. */
  moveTo(theta: number): boolean;
  /** The same at any z. */
  moveToPoint(z: Complex): boolean;
  /** (z I − Φ)⁻¹ right, for a column. */
  column(right: ComplexVector): ComplexVector;
  /** left (z I − Φ)⁻¹, for a row. */
  row(left: ComplexVector): ComplexVector;
}

/** Gaussian elimination with partial pivoting, in complex numbers. */
export function createResolvent({
  order: n,
  transition,
}: Pick<SampledPlant, 'order' | 'transition'>): Resolvent {
  const re = new Float64Array(n * n);
  const im = new Float64Array(n * n);
  const rows = new Int32Array(n);
  /** Reciprocals of the pivots. */
  const pivots = complexVector(n);

  const swap = (i: number, k: number): void => {
    for (const part of [re, im]) {
      for (let j = 0; j < n; j++) {
        const kept = part[i * n + j] ?? 0;
        part[i * n + j] = part[k * n + j] ?? 0;
        part[k * n + j] = kept;
      }
    }
    const row = rows[i] ?? 0;
    rows[i] = rows[k] ?? 0;
    rows[k] = row;
  };

  return {
    moveTo(theta) {
      const [cos, sin] = onCircle(theta, 1);
      return this.moveToPoint({ re: cos, im: sin });
    },

    moveToPoint({ re: cos, im: sin }) {
      for (let i = 0; i < n * n; i++) {
        re[i] = -(transition[i] ?? 0);
        im[i] = 0;
      }
      for (let i = 0; i < n; i++) {
        re[i * n + i] = (re[i * n + i] ?? 0) + cos;
        im[i * n + i] = sin;
        rows[i] = i;
      }
      for (let k = 0; k < n; k++) {
        let pivot = k;
        let largest = 0;
        for (let i = k; i < n; i++) {
          const pRe = re[i * n + k] ?? 0;
          const pIm = im[i * n + k] ?? 0;
          const size = pRe * pRe + pIm * pIm;
          if (size > largest) {
            largest = size;
            pivot = i;
          }
        }
        if (largest === 0) return false;
        if (pivot !== k) swap(k, pivot);
        const dRe = (re[k * n + k] ?? 0) / largest;
        const dIm = -(im[k * n + k] ?? 0) / largest;
        pivots.re[k] = dRe;
        pivots.im[k] = dIm;
        for (let i = k + 1; i < n; i++) {
          const eRe = re[i * n + k] ?? 0;
          const eIm = im[i * n + k] ?? 0;
          if (eRe === 0 && eIm === 0) continue;
          const fRe = eRe * dRe - eIm * dIm;
          const fIm = eRe * dIm + eIm * dRe;
          re[i * n + k] = fRe;
          im[i * n + k] = fIm;
          for (let j = k + 1; j < n; j++) {
            const uRe = re[k * n + j] ?? 0;
            const uIm = im[k * n + j] ?? 0;
            re[i * n + j] = (re[i * n + j] ?? 0) - (fRe * uRe - fIm * uIm);
            im[i * n + j] = (im[i * n + j] ?? 0) - (fRe * uIm + fIm * uRe);
          }
        }
      }
      return true;
    },

    column(right) {
      const out = complexVector(n);
      for (let i = 0; i < n; i++) {
        let sumRe = right.re[rows[i] ?? 0] ?? 0;
        let sumIm = right.im[rows[i] ?? 0] ?? 0;
        for (let j = 0; j < i; j++) {
          const lRe = re[i * n + j] ?? 0;
          const lIm = im[i * n + j] ?? 0;
          sumRe -= lRe * (out.re[j] ?? 0) - lIm * (out.im[j] ?? 0);
          sumIm -= lRe * (out.im[j] ?? 0) + lIm * (out.re[j] ?? 0);
        }
        out.re[i] = sumRe;
        out.im[i] = sumIm;
      }
      for (let i = n - 1; i >= 0; i--) {
        let sumRe = out.re[i] ?? 0;
        let sumIm = out.im[i] ?? 0;
        for (let j = i + 1; j < n; j++) {
          const uRe = re[i * n + j] ?? 0;
          const uIm = im[i * n + j] ?? 0;
          sumRe -= uRe * (out.re[j] ?? 0) - uIm * (out.im[j] ?? 0);
          sumIm -= uRe * (out.im[j] ?? 0) + uIm * (out.re[j] ?? 0);
        }
        scale(out, i, sumRe, sumIm);
      }
      return out;
    },

    row(left) {
      // rows taken in order give P M = L U; left = x M = w L U with x = w P, solved from U, then L, then put back
      const half = complexVector(n);
      for (let j = 0; j < n; j++) {
        let sumRe = left.re[j] ?? 0;
        let sumIm = left.im[j] ?? 0;
        for (let i = 0; i < j; i++) {
          const uRe = re[i * n + j] ?? 0;
          const uIm = im[i * n + j] ?? 0;
          sumRe -= uRe * (half.re[i] ?? 0) - uIm * (half.im[i] ?? 0);
          sumIm -= uRe * (half.im[i] ?? 0) + uIm * (half.re[i] ?? 0);
        }
        scale(half, j, sumRe, sumIm);
      }
      const out = complexVector(n);
      for (let j = n - 1; j >= 0; j--) {
        let sumRe = half.re[j] ?? 0;
        let sumIm = half.im[j] ?? 0;
        for (let i = j + 1; i < n; i++) {
          const lRe = re[i * n + j] ?? 0;
          const lIm = im[i * n + j] ?? 0;
          sumRe -= lRe * (half.re[i] ?? 0) - lIm * (half.im[i] ?? 0);
          sumIm -= lRe * (half.im[i] ?? 0) + lIm * (half.re[i] ?? 0);
        }
        half.re[j] = sumRe;
        half.im[j] = sumIm;
        out.re[rows[j] ?? 0] = sumRe;
        out.im[rows[j] ?? 0] = sumIm;
      }
      return out;
    },
  };

  function scale(v: ComplexVector, i: number, sumRe: number, sumIm: number): void {
    const pRe = pivots.re[i] ?? 0;
    const pIm = pivots.im[i] ?? 0;
    v.re[i] = sumRe * pRe - sumIm * pIm;
    v.im[i] = sumRe * pIm + sumIm * pRe;
  }
}
