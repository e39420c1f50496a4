/** The choices kept after one day of a `cost-walk.ts`, in arrays side by side. */

export interface CostLayer {
  size: number;
  /**
   * Per choice and course: regrets of coming to the days ahead (a ring), then that of being done,
   * then regrets at the last feedings: the days just passed (the same ring, one turn back), and
   * those it could end with.
   */
  values: Float64Array;
  /** Per choice and course: the least of them. */
  least: Float64Array;
  /** Per choice and course: bits for the days ahead that can be reached, 32 days folded onto one. */
  reach: Int32Array;
  counts: Int32Array;
  /** Regret of the rounds taken. */
  own: Float64Array;
  /** `own` and all `least`. */
  total: Float64Array;
  /** `total` and what is surely to come. */
  outlook: Float64Array;
  trails: Int32Array;
  /** Order of earliness: smaller has the earlier days. */
  rank: Float64Array;
}

const perChoice = ["counts", "own", "total", "outlook", "trails", "rank"] as const;
const arrays = ["values", "least", "reach", ...perChoice] as const;

export function newLayer(capacity: number, courseCount: number, row: number): CostLayer {
  return {
    size: 0,
    values: new Float64Array(capacity * courseCount * row),
    least: new Float64Array(capacity * courseCount),
    reach: new Int32Array(capacity * courseCount),
    counts: new Int32Array(capacity),
    own: new Float64Array(capacity),
    total: new Float64Array(capacity),
    outlook: new Float64Array(capacity),
    trails: new Int32Array(capacity),
    rank: new Float64Array(capacity),
  };
}

export function grown(layer: CostLayer, courseCount: number, row: number): CostLayer {
  const bigger = newLayer(2 * layer.counts.length, courseCount, row);
  bigger.size = layer.size;
  for (const key of arrays) bigger[key].set(layer[key]);
  return bigger;
}

export function copyChoice(
  from: CostLayer,
  c: number,
  to: CostLayer,
  k: number,
  courseCount: number,
  row: number,
): void {
  const stride = courseCount * row;
  to.values.set(from.values.subarray(c * stride, (c + 1) * stride), k * stride);
  const least = from.least.subarray(c * courseCount, (c + 1) * courseCount);
  to.least.set(least, k * courseCount);
  const reach = from.reach.subarray(c * courseCount, (c + 1) * courseCount);
  to.reach.set(reach, k * courseCount);
  for (const key of perChoice) to[key][k] = from[key][c] as number;
}
