/** What is wrong with batches in hand on a certain day; the rest is found when the file is read. */
import type { Day } from "../../dates.js";
import type { BatchInHand } from "../../garden/index.js";
import type { Finding } from "../../problem.js";

/** In the order of the batches; paths point into the garden file. */
export function checkBatches(batches: readonly BatchInHand[], today: Day): Finding[] {
  return batches.flatMap(({ made, leftOn, path }) => {
    const findings: Finding[] = [];
    if (made > today)
      findings.push({
        code: "batch-in-future",
        path: [...path, "made"],
        message: `made on ${made}, which is after today, ${today}`,
        mend: "give the day it was strained and bottled; batches to come are planned, not listed",
      });
    if (leftOn !== undefined && (leftOn < made || leftOn > today))
      findings.push({
        code: "batch-left-on",
        path: [...path, "left_on"],
        message: `left measured on ${leftOn}, which is not between its making on ${made} and today, ${today}`,
        mend: "give the day on which you looked how much was left",
      });
    return findings;
  });
}
