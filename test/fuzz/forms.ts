/** Forms of the writing pages: what they are read as, and what they write. */
import { addDays, type Day } from "../../src/dates.js";
import { gardenOfText } from "../../src/plan-garden.js";
import { fieldsIn } from "../../src/serve/form-body.js";
import { loadTables } from "../../src/tables.js";
import { type Fields, readTick, tickFields, type Ticked } from "../../src/ticks/index.js";
import type { Standing } from "../../src/ticks/tick.js";
import { given } from "../../src/values.js";
import {
  asPlanned,
  missedIn,
  type Page,
  type Served,
  servedGarden,
} from "../cli/a-served-garden.js";
import type { Dice } from "../live/player/dice.js";
import { encoded } from "../serve/a-writer.js";
import { aKind, type Hunting } from "./kind.js";
import { mustBeFit, mustHold } from "./must-hold.js";
import { firstDifference } from "./season-holds.js";
import { smallGardens } from "./small-gardens.js";
import { spoilText } from "./spoil-text.js";

interface FormGarden {
  readonly served: Served;
  readonly text: string;
  readonly today: Day;
  readonly forms: readonly Fields[];
}

interface Form {
  readonly garden: FormGarden;
  readonly body: string;
}

const id = "A".repeat(22);

interface Shown {
  readonly what: Ticked;
  readonly seen: Standing;
}

/** All that the page of a day offers. */
function formsOf({ sheet, plan }: Page): Fields[] {
  const page = { sheet, plan };
  const rounds = sheet.rounds.flatMap(({ day }) => [asPlanned(page, day), missedIn(page, day)]);
  const steps = sheet.steps.map((step): Shown => {
    const { batch, step: key, seen, volume } = step;
    return { what: { kind: "step", batch, step: key, ...given({ volume }) }, seen: { seen } };
  });
  const seenOn = sheet.plantings.flatMap(({ id: planting, stages, signs }): Shown[] => [
    ...stages.map(({ stage, seen }): Shown => ({
      ...{ what: { kind: "stage", planting, stage }, seen: { seen } },
    })),
    ...signs.map(({ sign, seen }): Shown => ({
      ...{ what: { kind: "sign", planting, sign }, seen: { seen } },
    })),
  ]);
  return [...rounds, ...steps, ...seenOn].map(({ what, seen: { seen } }) =>
    tickFields({ id, seen, what }),
  );
}

async function formGarden(text: string): Promise<FormGarden[]> {
  const read = gardenOfText(text, "garden.yaml", loadTables());
  mustHold(read.ok, "a garden to be ticked in is not good", read);
  const { season } = read.value.garden;
  const today = addDays(season.from, 95);
  const served = servedGarden(text);
  const forms = formsOf(await served.page(today));
  return forms.length === 0 ? [] : [{ served, text, today, forms }];
}

/** A form with some fields left out, doubled, mixed up or of another form. */
function spoiltFields(fields: Fields, dice: Dice, other: Fields): Fields {
  const spoilt = [...fields];
  for (let i = dice.between(0, 2); i > 0; i--) {
    const at = dice.between(0, spoilt.length - 1);
    const strange = dice.pick(other);
    const more = dice.pick([
      ...[strange, ["stock-0", "25 mL"], ["stock-0", "0"], ["batch-0", ""], ["on", "2027-06-20"]],
      ...[
        ["tapped", "1813219200000"],
        ["missed", "1"],
        ["volume", "1,5 L"],
      ],
    ] as Fields);
    const [name] = spoilt[at] ?? [""];
    const values = [
      [],
      [strange],
      [more, more],
      [[name, strange[1]] as const],
      [[name, ""] as const],
    ];
    spoilt.splice(at, dice.between(0, 1), ...dice.pick(values));
  }
  return spoilt;
}

async function begin(): Promise<Hunting<Form>> {
  const all = smallGardens().slice(0, 20);
  const gardens = (await Promise.all(all.map(formGarden))).flat();
  const bodies = gardens.flatMap(({ forms }) => forms.map(encoded));
  return {
    make: (dice) => {
      const garden = dice.pick(gardens);
      const fields = spoiltFields(dice.pick(garden.forms), dice, dice.pick(garden.forms));
      const body = encoded(fields);
      const words = [
        "round",
        "step",
        "sign",
        "stage",
        "%00",
        "%1B",
        "&",
        "=",
        "+",
        "%e2%80%ae",
        "kind",
      ];
      return {
        garden,
        body: dice.chance(0.6) ? spoilText(body, dice, { words, others: bodies }) : body,
      };
    },
    shown: ({ body, garden: { text } }) => `${body}\n\n${text}`,
    check: async ({ body, garden: { served, text, today } }) => {
      const fields = fieldsIn(Buffer.from(body));
      if (fields === undefined) return "refused";
      const asked = readTick(fields);
      if (!asked.ok) {
        for (const { message, mend } of asked.problems) mustBeFit(`${message}: ${mend}`, body);
        return "refused";
      }
      if (asked.value.kind === "undo") return "accepted";
      served.put(text);
      const { tick } = asked.value;
      const asOf = { nowMs: Date.parse(`${today}T09:00:00Z`) };
      const outcome = await served.writer.tick(served.file, tick, asOf);
      mustBeFit(JSON.stringify(outcome).replace(/\\[nt"]/g, ""), text, body);
      const after = served.text();
      if (outcome.kind !== "written") {
        mustHold(after === text, "nothing was to be written", firstDifference(text, after));
        return outcome.kind === "already" ? "accepted" : "refused";
      }
      const read = gardenOfText(after, "garden.yaml", loadTables());
      mustHold(read.ok, "a form has spoilt a garden", read);
      await served.writer.tick(served.file, tick, asOf);
      mustHold(served.text() === after, "a form that came twice wrote twice", body);
      await served.writer.takeBack(served.file, outcome.undo, asOf);
      const back = served.text();
      mustHold(back === text, "what was taken back leaves traces", firstDifference(text, back));
      return "accepted";
    },
  };
}

export const forms = aKind({ name: "forms", share: 4, begin });
