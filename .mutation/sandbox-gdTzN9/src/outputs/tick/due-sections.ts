/** Rounds and steps by when they are asked for: today, before and not written down, later. */
// @ts-nocheck

import type { Day } from "../../dates.js";
import { longDay, shortDay } from "../../garden/index.js";
import type { TickSheet } from "../../ticks/index.js";
import { byText } from "../../values.js";
import { section } from "../document.js";
import { html, type Html, joined } from "../html.js";
import { dayTime } from "../round-card.js";
import { roundCard, roundKey, roundTitle } from "./round-card.js";
import { stepCard, stepKey, stepTitle } from "./step-card.js";
import type { TickView } from "./tick-view.js";

interface Due {
  readonly day: Day;
  readonly key: string;
  readonly title: Html;
  readonly card: () => Html;
}

/** What of the plan is not written down, by day; a bottle that may be thrown away is not asked for. */
function dueThings(sheet: TickSheet, view: TickView): Due[] {
  const rounds = sheet.rounds
    .filter(({ state }) => state === "open" || state === "in part")
    .map((round) => ({
      day: round.day,
      key: roundKey(round),
      title: roundTitle(round),
      card: () => roundCard(round, sheet, view),
    }));
  const steps = sheet.steps
    .filter(({ told, isAnyDay }) => told === undefined && isAnyDay === undefined)
    .map((step) => ({
      day: step.day,
      key: stepKey(step),
      title: stepTitle(step),
      card: () => stepCard(step, view),
    }));
  return [...rounds, ...steps].sort((a, b) => byText(a.day, b.day));
}

export function dueSections(sheet: TickSheet, view: TickView): readonly Html[] {
  const { today } = view;
  const things = dueThings(sheet, view);
  const now = things.filter(({ day }) => day === today);
  // What was forgotten lately is remembered best.
  const before = things.filter(({ day }) => day < today).reverse();
  const later = things.filter(({ day }) => day > today);
  const { amounts } = sheet;
  const head = `Today, ${longDay(today, amounts)}`;
  const isDone = [...sheet.rounds, ...sheet.steps].some(
    ({ day, told }) => day === today && told !== undefined,
  );
  const none = html`<p class="none">
    ${isDone ? "All of today is written down." : "Nothing is planned for today."}
  </p>`;
  return [
    section("due", head, now.length === 0 ? none : now.map(openCard)),
    ...folded("before", "Earlier, and not written down", before, sheet, true),
    ...folded("later", "Coming days", later, sheet, false),
  ];
}

function openCard({ key, title, card }: Due): Html {
  return html`<article class="card" data-thing-key="${key}">
    <h3>${title}</h3>
    ${card()}
  </article>`;
}

function folded(
  id: string,
  heading: string,
  things: readonly Due[],
  { amounts }: TickSheet,
  isFirstOpen: boolean,
): readonly Html[] {
  if (things.length === 0) return [];
  const cards = things.map(
    ({ day, key, title, card }, i) =>
      html`<details class="card" data-thing-key="${key}" ${isFirstOpen && i === 0 && html` open`}>
        <summary>
          ${dayTime(day, shortDay(day, amounts), "day")} <span class="what">${title}</span>
        </summary>
        ${card()}
      </details>`,
  );
  return [section(id, heading, joined(cards, "\n"))];
}
