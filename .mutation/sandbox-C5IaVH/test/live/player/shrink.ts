/** The fewest acts that still lead to a violation, found by leaving out what can be. */
// @ts-nocheck

import { play, type Played, type Script } from "./season.js";

/** @param tries plays at most */
export async function shrunken(
  script: Script,
  tries: number,
): Promise<{ script: Script; played: Played }> {
  let [best, played] = [script, await play(script)];
  const end = played.violation?.day;
  if (end === undefined) return { script, played };
  best = { ...script, acts: script.acts.filter(({ day }) => day <= end) };
  for (let size = Math.ceil(best.acts.length / 2), left = tries; size >= 1 && left > 0;) {
    let isSmaller = false;
    for (let from = 0; from < best.acts.length && left > 0; left--) {
      const fewer = { ...best, acts: best.acts.filter((_, i) => i < from || i >= from + size) };
      const again = await play(fewer);
      if (again.violation === undefined) from += size;
      else {
        [best, played, isSmaller] = [fewer, again, true];
      }
    }
    if (size === 1 && !isSmaller) break;
    size = size === 1 ? 1 : Math.ceil(size / 2);
  }
  return { script: best, played };
}
