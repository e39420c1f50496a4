/**
 * Amounts that balance, as the lowest point of a bowl. With ideal logarithms the Gibbs energy of a
 * mixture has a dual that is convex: F(v) = sum_i exp(c_i + A_i . v) - b . v. Where its gradient is
 * nought, sum_i A_ij n_i = b_j: every balance is met.
 */
// @ts-nocheck


export interface LeastEnergy {
  /** Where the lowest point is, per column of A. */
  readonly at: readonly number[];
  /** n_i = exp(c_i + A_i . v), per row of A. */
  readonly amounts: readonly number[];
  readonly steps: number;
}

const mostSteps = 400;
// Newton's step is right to the square of its length, so that after one this short the balances stand
// at rounding error.
const shortStep = 1e-8;
// From here on each step is the square of the last, unless rounding alone moves it.
const nearStep = 1e-5;
// A sum of exponentials falls along the whole Newton step when no exponent changes by more than 1.79
// (where e^d - 1 - d reaches d^2). Longer steps are cut to where it is sure to fall: ln(1+d)/d.
const sureStep = 1.5;

/**
 * Damped Newton from `start`. Converges from anywhere, because F is convex and falls at every step;
 * undefined only when the numbers leave what a double can hold, or no lowest point exists.
 */
export function leastEnergy(
  rows: readonly (readonly number[])[],
  constants: readonly number[],
  totals: readonly number[],
  start: readonly number[],
): LeastEnergy | undefined {
  const n = rows.length;
  const f = totals.length;
  const v = start.slice();
  const amounts = new Array<number>(n).fill(0);
  const gradient = new Array<number>(f).fill(0);
  const hessian = new Array<number>(f * f).fill(0);

  let before = Infinity;
  for (let step = 0, last = false; step <= mostSteps; step++) {
    for (let j = 0; j < f; j++) gradient[j] = -(totals[j] as number);
    hessian.fill(0);
    for (let i = 0; i < n; i++) {
      const row = rows[i] as readonly number[];
      let exponent = constants[i] as number;
      for (let j = 0; j < f; j++) exponent += (row[j] as number) * (v[j] as number);
      const amount = Math.exp(exponent);
      amounts[i] = amount;
      if (last) continue;
      for (let j = 0; j < f; j++) {
        const weighted = (row[j] as number) * amount;
        if (weighted === 0) continue;
        gradient[j] = (gradient[j] as number) + weighted;
        for (let k = 0; k <= j; k++)
          hessian[j * f + k] = (hessian[j * f + k] as number) + weighted * (row[k] as number);
      }
    }
    if (last) return { at: v, amounts, steps: step };
    if (!solveInPlace(hessian, gradient, f)) return undefined;

    let longest = 0;
    for (let i = 0; i < n; i++) {
      const row = rows[i] as readonly number[];
      let change = 0;
      for (let j = 0; j < f; j++) change += (row[j] as number) * (gradient[j] as number);
      longest = Math.max(longest, Math.abs(change));
    }
    if (!Number.isFinite(longest)) return undefined;
    const share = longest <= sureStep ? 1 : Math.log1p(longest) / longest;
    for (let j = 0; j < f; j++) v[j] = (v[j] as number) - share * (gradient[j] as number);
    last = longest <= shortStep || (longest <= nearStep && longest > before / 2);
    before = longest;
  }
  return undefined;
}

/** Cholesky on the lower triangle, scaled to a unit diagonal; `right` becomes the solution. */
function solveInPlace(lower: number[], right: number[], f: number): boolean {
  const scale = new Array<number>(f);
  for (let j = 0; j < f; j++) {
    const diagonal = lower[j * f + j] as number;
    if (!(diagonal > 0) || diagonal === Infinity) return false;
    scale[j] = 1 / Math.sqrt(diagonal);
  }
  for (let j = 0; j < f; j++) {
    right[j] = (right[j] as number) * (scale[j] as number);
    for (let k = 0; k <= j; k++)
      lower[j * f + k] = (lower[j * f + k] as number) * (scale[j] as number) * (scale[k] as number);
  }
  for (let j = 0; j < f; j++) {
    for (let k = 0; k <= j; k++) {
      let sum = lower[j * f + k] as number;
      for (let m = 0; m < k; m++)
        sum -= (lower[j * f + m] as number) * (lower[k * f + m] as number);
      // Two columns that are all but parallel: hold the direction still rather than fail.
      if (j === k) lower[j * f + j] = Math.sqrt(Math.max(sum, 1e-15));
      else lower[j * f + k] = sum / (lower[k * f + k] as number);
    }
  }
  for (let j = 0; j < f; j++) {
    let sum = right[j] as number;
    for (let k = 0; k < j; k++) sum -= (lower[j * f + k] as number) * (right[k] as number);
    right[j] = sum / (lower[j * f + j] as number);
  }
  for (let j = f - 1; j >= 0; j--) {
    let sum = right[j] as number;
    for (let k = j + 1; k < f; k++) sum -= (lower[k * f + j] as number) * (right[k] as number);
    right[j] = sum / (lower[j * f + j] as number);
  }
  for (let j = 0; j < f; j++) right[j] = (right[j] as number) * (scale[j] as number);
  return true;
}
