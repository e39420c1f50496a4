/** Weather in the grower's own measures. */
import { type Amounts, decimal } from "../garden/index.js";

/** `18 mm`, `0.7 in` */
export function rainText(mm: number, amounts: Amounts): string {
  return amounts === "us" ? `${decimal(mm / 25.4, 1)} in` : `${decimal(mm, 0)} mm`;
}

/** `27 C`, `80 F` */
export function temperatureText(degC: number, amounts: Amounts): string {
  return amounts === "us" ? `${decimal(degC * 1.8 + 32, 0)} F` : `${decimal(degC, 0)} C`;
}
