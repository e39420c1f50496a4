/** Five questions, each with what is wrong in its answer beside it. */
// @ts-nocheck

import { type Weekday, weekdays } from "../../dates.js";
import { button, made } from "../dom.js";
import { cropRow, type CropRow } from "./crop-row.js";
import { chosen, field, type FormField, group } from "./fields.js";
import type { Started } from "../checked-start.js";
import type { Answers } from "../starting-garden.js";

export interface StartOptions {
  readonly timezone: string;
  readonly amounts: Answers["amounts"];
  /** Offered while one types; any other may be written. */
  readonly crops: readonly string[];
  readonly timezones: readonly string[];
  readonly check: (answers: Answers) => Promise<Started>;
  readonly onDone: (text: string) => void;
  readonly onCancel: () => void;
}

const measures = { metric: "metric", us: "US", imperial: "imperial" } as const;
const dayNames: Readonly<Record<Weekday, string>> = {
  ...{ mon: "Monday", tue: "Tuesday", wed: "Wednesday", thu: "Thursday" },
  ...{ fri: "Friday", sat: "Saturday", sun: "Sunday" },
};

/** The form itself; focus is the caller's to give. */
export function startForm(options: StartOptions): HTMLFormElement {
  const isUs = options.amounts === "us";
  const name = field("Name of the garden", "name", { value: "My garden" });
  const timezone = field("Time zone", "timezone", {
    value: options.timezone,
    offered: options.timezones,
  });
  const half = chosen("Half of the earth", "half", {
    "": "as place or time zone say",
    north: "north",
    south: "south",
  });
  const number = { inputMode: "decimal", hint: "may be left empty" } as const;
  const latitude = field("Latitude, south below 0", "latitude", number);
  const longitude = field("Longitude, west below 0", "longitude", number);
  const amounts = chosen("Measures", "amounts", measures, options.amounts);
  const can = field("A full watering can holds", "can", { value: isUs ? "2 gal" : "9 L" });
  const days = dayBoxes();
  const acid = chosen("Acid", "acid", { citric: "citric acid", vinegar: "vinegar" });
  const keep = chosen("The bottles stand", "keep", { fridge: "in a fridge", shelf: "on a shelf" });
  const bottles = field("A bottle holds", "bottles", { value: isUs ? "1 pt" : "500 mL" });
  const shells = field("Eggs a week whose shells you keep", "shells", {
    value: "10",
    inputMode: "numeric",
  });
  const crops = cropList(options.crops);
  const told = made("p", { className: "told-of-place" });
  told.setAttribute("role", "status");
  const fields: readonly FormField[] = [
    ...[name, timezone, half, latitude, longitude, amounts, can],
    ...[days.field, crops.field, acid, keep, bottles, shells],
  ];
  const answers = (): Answers => ({
    ...{ name: name.value(), timezone: timezone.value(), half: half.value() },
    ...{ latitude: latitude.value(), longitude: longitude.value(), amounts: amounts.value() },
    ...{ can: can.value(), days: days.chosen(), crops: crops.rows().map((row) => row.answer()) },
    ...{ acid: acid.value(), keep: keep.value() },
    ...{ bottles: bottles.value(), shells: shells.value() },
  });

  /** Beside fields that were answered, or beside all once the file is asked for. */
  function show({ problems }: Started, all: boolean): FormField[] {
    const shown = [...fields, ...crops.rows().flatMap((row, i) => row.fields(i))];
    return shown.filter((one) => {
      const words = problems.filter((p) => p.field === one.name).map((p) => p.told);
      one.tell(all || one.wasAnswered() ? words.join(" ") : "");
      return words.length > 0;
    });
  }

  const placeButton = button("Take it from this device", () => {
    told.textContent = "Asking the device…";
    navigator.geolocation.getCurrentPosition(
      ({ coords }) => {
        // A tenth of a degree is some 10 km: the climate's table is no finer.
        latitude.put(coords.latitude.toFixed(1));
        longitude.put(coords.longitude.toFixed(1));
        told.textContent = "To a tenth of a degree. It stays in this page and in your file.";
      },
      ({ message }) => {
        told.textContent = `The device does not tell (${message}): type it, or leave it empty.`;
      },
    );
  });

  const form = made(
    "form",
    { className: "start", noValidate: true },
    made("h2", {}, "Five questions"),
    group("1. Where is the garden?", name, timezone, half, latitude, longitude, placeButton, told),
    group("2. What do you water with?", amounts, can),
    group("3. On which days can you feed?", days.field),
    group("4. What grows, and since when?", crops.field),
    group("5. How do you make the feed?", acid, keep, bottles, shells),
    made(
      "div",
      { className: "buttons" },
      made("button", { type: "submit" }, "Write the garden file"),
      button("Leave the questions", options.onCancel),
    ),
  );
  form.setAttribute("aria-label", "Start a garden file");
  let asked = 0;
  form.addEventListener("change", () => {
    const turn = ++asked;
    void options.check(answers()).then((started) => {
      if (turn === asked) show(started, false);
    });
  });
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    asked++;
    void options.check(answers()).then((started) => {
      const [first] = show(started, true);
      if (first === undefined) options.onDone(started.text);
      else first.focus();
    });
  });
  return form;
}

function dayBoxes(): { readonly field: FormField; readonly chosen: () => Weekday[] } {
  const boxes = weekdays.map((day) => {
    const box = made("input", { type: "checkbox", name: "days", value: day });
    box.checked = day === "wed" || day === "sat";
    return { day, box };
  });
  const labels = boxes.map(({ day, box }) => made("label", {}, box, ` ${dayNames[day]}`));
  const whole = made("div", { className: "boxes" }, ...labels);
  const field = group.field("days", whole, () => boxes[0]?.box);
  return { field, chosen: () => boxes.filter(({ box }) => box.checked).map(({ day }) => day) };
}

function cropList(words: readonly string[]): {
  readonly field: FormField;
  readonly rows: () => readonly CropRow[];
} {
  let rows: CropRow[] = [];
  const list = made("div", { className: "crop-rows" });
  const more = button("Add a crop", () => {
    add().focus();
  });
  const add = (): CropRow => {
    const row: CropRow = cropRow(words, () => {
      rows = rows.filter((other) => other !== row);
      row.element.remove();
      more.focus();
      list.dispatchEvent(new Event("change", { bubbles: true }));
    });
    rows.push(row);
    list.append(row.element);
    return row;
  };
  add();
  const whole = made("div", {}, list, more);
  return { field: group.field("crops", whole, () => more), rows: () => rows };
}
