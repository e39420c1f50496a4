export type { FormOutcome, TickView, WrittenLately } from "./tick-view.js";
