// @ts-nocheck
import { expect } from "vitest";
import { calendarText } from "../../src/calendar/calendar-text.js";
import { type Problem, problemLine } from "../../src/problem.js";
import { planFile } from "./a-garden.js";
import { eventsIn } from "./ics.js";

/**
 * A file gives a plan with a calendar, or problems that a grower can act on; it never throws.
 *
 * @returns which of the two
 */
export function checkFile(bytes: Uint8Array, ownRules?: string): "plan" | "problems" {
  const plan = planFile(bytes, ownRules);
  if (!plan.ok) {
    checkProblems(plan.problems, [bytes, ownRules]);
    return "problems";
  }
  expect(JSON.stringify(plan.value)).not.toMatch(/:null|\[null|NaN|Infinity/);
  const calendar = calendarText(plan.value);
  if (!calendar.ok) throw new Error("a plan without a calendar");
  const days = plan.value.rounds.filter((round) => round.beds.length > 0).map((round) => round.day);
  const events = eventsIn(calendar.value);
  expect(events.map((event) => event.startDate.toString().slice(0, 10))).toEqual(
    expect.arrayContaining(days),
  );
  return "plan";
}

function checkProblems(
  problems: readonly Problem[],
  [garden, rules]: readonly [Uint8Array, string | undefined],
): void {
  expect(problems.length).toBeGreaterThan(0);
  const texts = `${new TextDecoder().decode(garden)}${rules ?? ""}`;
  const lineCount = (text: string): number => text.split(/\r\n|\n|\r/).length;
  const lines = {
    "garden.yaml": lineCount(new TextDecoder().decode(garden)),
    "rules.yaml": lineCount(rules ?? ""),
  };
  for (const problem of problems) {
    const { file, at, message, mend } = problem;
    const last = lines[file as keyof typeof lines];
    expect(Number.isInteger(at.line) && at.line >= 1 && at.line <= last, problemLine(problem)).toBe(
      true,
    );
    expect(Number.isInteger(at.column) && at.column >= 1).toBe(true);
    expect(message).not.toBe("");
    expect(mend).not.toBe("");
    // One line, and nothing of the program's insides but what the file itself holds.
    expect(problemLine(problem)).not.toContain("\n");
    for (const word of ["undefined", "NaN", "[object ", "Error:"])
      expect(problemLine(problem).includes(word) && !texts.includes(word), word).toBe(false);
  }
}
