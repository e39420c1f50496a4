/**
 * Pairs days of two rows, each day at most once: as many pairs as can be no further apart than
 * `withinDays`, among those the least distance in sum, among those the earliest days. Both rows sorted.
 *
 * On a line some best pairing never crosses, so the rows are walked like two texts being compared;
 * time and memory grow with the product of their lengths.
 *
 * @returns pairs of indexes into the two rows, in order
 */
// @ts-nocheck

export function nearestPairs(
  olds: readonly number[],
  news: readonly number[],
  withinDays: number,
): [number, number][] {
  const width = news.length + 1;
  // A pair outweighs any sum of distances.
  const pairWorth = (withinDays + 1) * (Math.min(olds.length, news.length) + 1);
  const cost = new Float64Array((olds.length + 1) * width);
  const at = (i: number, j: number) => cost[i * width + j] ?? 0;
  const costOfPair = (i: number, j: number) => {
    const distance = Math.abs((olds[i] ?? 0) - (news[j] ?? 0));
    return distance <= withinDays ? distance - pairWorth : Infinity;
  };
  // cost(i, j): the best for the days from i and j on.
  for (let i = olds.length - 1; i >= 0; i--) {
    for (let j = news.length - 1; j >= 0; j--) {
      cost[i * width + j] = Math.min(
        at(i + 1, j),
        at(i, j + 1),
        at(i + 1, j + 1) + costOfPair(i, j),
      );
    }
  }
  const pairs: [number, number][] = [];
  for (let i = 0, j = 0; i < olds.length && j < news.length;) {
    if (at(i, j) === at(i + 1, j + 1) + costOfPair(i, j)) pairs.push([i++, j++]);
    else if (at(i, j) === at(i, j + 1)) j++;
    else i++;
  }
  return pairs;
}
