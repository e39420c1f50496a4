/** All kinds of input. */
import { calendars } from "./calendars.js";
import { forms } from "./forms.js";
import { gardens } from "./gardens.js";
import { keptPlans } from "./kept-plans.js";
import type { Kind } from "./kind.js";
import { logOrders } from "./log-orders.js";
import { requests } from "./requests.js";
import { ruleFiles } from "./rule-files.js";
import { weatherFiles } from "./weather-files.js";

export const kinds: readonly Kind[] = [
  ...[gardens, ruleFiles, weatherFiles, calendars, keptPlans, logOrders],
  ...[requests, forms],
];
