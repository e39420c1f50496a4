/** What may be seen or done on any day: signs, stages, bottles thrown away. */
// @ts-nocheck

import type { PlantingToTick, StepToTick, Ticked, TickSheet } from "../../ticks/index.js";
import { capital } from "../../words/index.js";
import { section } from "../document.js";
import { html, type Html, nameHtml } from "../html.js";
import { dayField, fieldsFor, formOf, mainButton, otherButton } from "./form-parts.js";
import { stepKey } from "./step-card.js";
import type { TickView } from "./tick-view.js";

/** More than that are folded. Our choice. */
const fewPlantings = 10;

const anyDay = "Day, where it was not today";

export function seenSection(sheet: TickSheet, view: TickView): Html | undefined {
  if (sheet.plantings.length === 0) return undefined;
  const names = new Map(sheet.signs.map(({ sign, name }) => [sign, name]));
  const folds = sheet.plantings.map((planting) => plantingFold(planting, names, view));
  const body =
    folds.length > fewPlantings
      ? html`<details class="fold">
          <summary>Choose one of ${folds.length} plantings</summary>
          ${folds}
        </details>`
      : folds;
  return section("seen", "Seen on a plant", body);
}

export function bottlesSection({ steps }: TickSheet, view: TickView): Html | undefined {
  const bottles = steps.filter(({ told, isAnyDay }) => isAnyDay && told === undefined);
  if (bottles.length === 0) return undefined;
  return section(
    "bottles",
    "Bottles",
    bottles.map((one) => bottleFold(one, view)),
  );
}

function bottleFold(one: StepToTick, view: TickView): Html {
  const { batch, batchName, step, seen } = one;
  return html`<details class="card" data-thing-key="${stepKey(one)}">
    <summary>${nameHtml(capital(batchName))}</summary>
    ${formOf(view, {
      thing: batchName,
      key: stepKey(one),
      fields: fieldsFor(view, seen, { kind: "step", batch, step }),
      body: html`${dayField(anyDay)} ${otherButton("Thrown away")}`,
    })}
  </details>`;
}

function plantingFold(
  planting: PlantingToTick,
  signNames: ReadonlyMap<string, string>,
  view: TickView,
): Html {
  const { id, name, bedName } = planting;
  const signs = planting.signs.map(({ sign, ...standing }) => ({
    ...standing,
    name: signNames.get(sign) ?? sign,
    what: { kind: "sign", planting: id, sign } as const,
  }));
  const stages = planting.stages.map(({ stage, ...standing }) => ({
    ...standing,
    what: { kind: "stage", planting: id, stage } as const,
  }));
  return html`<details class="card" data-thing-key="${plantingKey(planting)}">
    <summary>${nameHtml(name)} <span class="soft">${nameHtml(bedName)}</span></summary>
    ${choiceForm("A sign of trouble", signs, planting, view)}
    ${seenBefore(signs, (one) => choiceFields(one, planting, view, otherButton("Seen again")))}
    ${choiceForm("A stage that it has entered", stages, planting, view)} ${seenBefore(stages)}
  </details>`;
}

function plantingKey({ id }: PlantingToTick): string {
  return `seen ${id}`;
}

interface Choice {
  readonly what: Extract<Ticked, { kind: "sign" | "stage" }>;
  readonly name: string;
  readonly seen: string;
  readonly told?: string;
}

/** One form for all that was not seen before, since they have one standing. */
function choiceForm(
  label: string,
  choices: readonly Choice[],
  planting: PlantingToTick,
  view: TickView,
): Html | undefined {
  const unseen = choices.filter(({ told }) => told === undefined);
  const [first] = unseen;
  if (first === undefined) return undefined;
  const { kind } = first.what;
  const list = html`<label class="field"
    ><span>${label}</span>
    <select name="${kind}" required>
      <option value="">choose</option>
      ${unseen.map(({ what, name }) => html`<option value="${wordOf(what)}">${name}</option>`)}
    </select></label
  >`;
  return choiceFields(
    first,
    planting,
    view,
    mainButton(kind === "sign" ? "Sign seen" : "Stage seen"),
    list,
  );
}

function wordOf(what: Choice["what"]): string {
  return what.kind === "sign" ? what.sign : what.stage;
}

/** @param list from which it is chosen; without it it is the choice itself */
function choiceFields(
  { what, seen, name }: Choice,
  planting: PlantingToTick,
  view: TickView,
  button: Html,
  list?: Html,
): Html {
  const fields = fieldsFor(view, seen, what);
  return formOf(view, {
    thing: list === undefined ? `${name}, ${planting.name}` : planting.name,
    key: plantingKey(planting),
    fields: list === undefined ? fields : fields.filter(([field]) => field !== what.kind),
    body: html`${list} ${dayField(anyDay)} ${button}`,
  });
}

function seenBefore(choices: readonly Choice[], form?: (one: Choice) => Html): readonly Html[] {
  return choices
    .filter(({ told }) => told !== undefined)
    .map(
      (one) =>
        html`<p class="so-far" dir="auto">${capital(one.name)}: ${one.told}</p>
          ${form?.(one)}`,
    );
}
