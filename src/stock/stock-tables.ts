import type { Chemistry } from "./chemistry/index.js";
import type { MakingRules } from "./making-rules.js";

/** The data files of stock, read. */
export interface StockTables {
  readonly chemistry: Chemistry;
  readonly making: MakingRules;
}
