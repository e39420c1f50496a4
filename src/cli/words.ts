/** Days and stages as a person says them. */
import type { Day } from "../dates.js";
import { shortDate, weekdayName } from "../words.js";

export { counted as count, shortDate as shortDay, stageWords as stageText } from "../words.js";

/** `Sat 26 Jun 2027` */
export function dayText(day: Day): string {
  return `${weekdayName(day).slice(0, 3)} ${shortDate(day)} ${day.slice(0, 4)}`;
}
