/** The right half: the plan, or the last good one while the text is broken. */
import type { ViewPart } from "../outputs/index.js";
import { type Problem, problemLines } from "../problem.js";
import { byId, made } from "./dom.js";
import type { Answered, Wanted } from "./messages.js";

export interface PlanPane {
  /** @param listed problems that stand beside the text already */
  readonly show: (answered: Answered, listed?: readonly Problem[]) => void;
}

export function planPane(openWanted: (wanted: Wanted) => readonly Node[]): PlanPane {
  const shown = new Map<string, { readonly markup: string; readonly place: HTMLElement }>();
  let lastGood: string | undefined;

  /** Only what is new is put in, so that what a reader has opened stays open. */
  function put({ id, markup }: ViewPart): void {
    const before = shown.get(id);
    if (before?.markup === markup) return;
    const place = before?.place ?? byId("parts").appendChild(made("div", { className: "part" }));
    const open = new Set([...place.querySelectorAll("details[open]>summary")].map(headOf));
    place.innerHTML = markup;
    for (const summary of place.querySelectorAll("details>summary"))
      if (open.has(headOf(summary))) summary.parentElement?.setAttribute("open", "");
    shown.set(id, { markup, place });
  }

  function tell(standing: string, problems: readonly Problem[] = [], isBehind = false): void {
    byId("standing").textContent = standing;
    byId("problems").replaceChildren(
      ...problemLines(problems).map((line) => made("li", { dir: "auto" }, line)),
    );
    byId("plan").classList.toggle("behind", isBehind);
  }

  return {
    show: (answered, listed = []) => {
      if (answered.kind === "plan") {
        lastGood = clock();
        byId("plan-head").textContent = `Plan of ${answered.garden}`;
        byId("first-line").textContent = answered.view.firstLine;
        for (const part of [...answered.view.parts, ...answered.reasons]) put(part);
        byId("more").hidden = answered.reasons.length > 0;
        byId("wanted").replaceChildren(
          ...answered.wanted.map((wanted) => {
            const told = `${wanted.name} is not open: ${wanted.told}. `;
            const item = made("li", {}, told, ...openWanted(wanted));
            Object.assign(item.dataset, { name: wanted.name, kind: wanted.kind });
            return item;
          }),
        );
        tell("The plan of the text as it stands.");
      } else if (answered.kind === "problems") {
        const { length } = answered.problems;
        const count = length === 1 ? "1 problem" : `${length} problems`;
        const below =
          lastGood === undefined ? "there is no plan yet" : `the plan below is of ${lastGood}`;
        const others = answered.problems.filter((problem) => !listed.includes(problem));
        tell(`The text has ${count}: ${below}.`, others, true);
      } else if (answered.kind === "failed")
        tell(`This text could not be planned, by a fault of the program: ${answered.told}`);
    },
  };
}

function headOf(summary: Element): string {
  return summary.textContent;
}

function clock(): string {
  return new Date().toLocaleTimeString([], { hour: "2-digit", minute: "2-digit" });
}
