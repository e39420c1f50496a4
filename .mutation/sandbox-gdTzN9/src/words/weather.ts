/** Weather in the grower's own measures. */
// @ts-nocheck

import { type Amounts, decimal } from "../garden/index.js";

/** `18 mm`, `0.7 in` */
export function rainText(mm: number, amounts: Amounts): string {
  return amounts === "us" ? `${decimal(mm / 25.4, 1)} in` : `${decimal(mm, 0)} mm`;
}
