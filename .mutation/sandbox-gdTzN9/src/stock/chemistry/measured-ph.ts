/** What a bottle must hold for its pH to be what the grower measured. */
// @ts-nocheck

import { type Brew, brewBatch, type BrewInput, fizzing, openAir } from "./brew.js";
import type { Chemistry } from "./constants.js";
import { failed, type MixResult, trouble } from "./trouble.js";

/** A jar without saying under which gas it stands. */
export type Jar = Omit<BrewInput, "gas">;

export interface BrewAtPh {
  readonly brew: Brew;
  /**
   * - `in-air`: all carbon dioxide has left;
   * - `holds-gas`: the acid is spent, carbon dioxide is still dissolved;
   * - `acid-left`: less shell has dissolved than there is acid for.
   */
  readonly because: "in-air" | "holds-gas" | "acid-left";
}

const halvings = 40;

/**
 * The brew of this jar at a measured pH: with the carbon dioxide, or the undissolved shell, that
 * explains it. A pH above that of the finished stock counts as finished: test strips read no closer.
 */
export function brewAtPh(chemistry: Chemistry, jar: Jar, measuredPh: number): MixResult<BrewAtPh> {
  if (!(measuredPh >= 0 && measuredPh <= 14))
    return failed(trouble("not-a-quantity", `pH is ${measuredPh}`, "give a pH from 0 to 14"));
  const finished = brewBatch(chemistry, { ...jar, gas: openAir(chemistry) });
  if (!finished.ok) return finished;
  if (measuredPh >= finished.value.ph)
    return { ok: true, value: { brew: finished.value, because: "in-air" } };
  const bubbling = brewBatch(chemistry, { ...jar, gas: fizzing });
  if (!bubbling.ok) return bubbling;
  const holdsGas = measuredPh >= bubbling.value.ph;
  const air = chemistry.physical.airLogPco2Atm.value;
  // The pH rises with the share of the gas that has left, or of the shell that has dissolved.
  let brew = bubbling.value;
  let low = 0;
  let high = 1;
  for (let i = 0; i < halvings; i++) {
    const share = (low + high) / 2;
    const input: BrewInput = holdsGas
      ? { ...jar, gas: { kind: "held", logPco2: air * share } }
      : { ...jar, shellG: jar.shellG * share, gas: fizzing };
    const found = brewBatch(chemistry, input);
    if (!found.ok) return found;
    brew = found.value;
    if (brew.ph > measuredPh) high = share;
    else low = share;
  }
  return { ok: true, value: { brew, because: holdsGas ? "holds-gas" : "acid-left" } };
}
