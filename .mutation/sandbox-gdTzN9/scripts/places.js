/**
 * Plans one garden in eight places of the world and prints them side by side, for a reader who asks
 * of each line whether a grower there would believe it: `npm run places`.
 */
// @ts-nocheck

import { stringify } from "yaml";
import { loadNormals, loadTables, planGarden } from "../dist/index.js";
import { eightPlaces, gardenIn } from "./eight-places.js";

const normals = await loadNormals();
const plans = eightPlaces.map((place) => {
  const options = { today: place.season.from, normals };
  const plan = planGarden(stringify(gardenIn(place)), loadTables(), options);
  if (!plan.ok) throw new Error(plan.problems.map(({ message }) => message).join("\n"));
  return { place, plan: plan.value };
});

const shortMonths = "Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec".split(" ");

function short(day) {
  if (day === undefined) return "-";
  const [, month, date] = day.split("-").map(Number);
  return `${date} ${shortMonths[month - 1]}`;
}

function frostLine({ frost }) {
  if (frost === undefined) return "no frost to be expected, or nothing known";
  if (frost.allYear) return "frost in any month";
  const { lastSpring: last, firstAutumn: first } = frost;
  return [
    last && `last frost ${short(last.day)}, one spring in ten after ${short(last.oneInTen)}`,
    first && `first ${short(first.day)}${first.endsPicking ? "" : " (only advises)"}`,
  ]
    .filter(Boolean)
    .join("; ");
}

/** What shows first what the crop is grown for. */
function showing({ stages }) {
  const names = ["flowering", "heading", "root-swelling"];
  return stages.find(({ stage }) => names.includes(stage));
}

function band(span) {
  const { warmth } = span ?? {};
  if (warmth === undefined) return "-";
  if (warmth.day === undefined) return `not by warmth; cal ${short(warmth.calendar)}`;
  const { earliest, latest, calendar } = warmth;
  return `${short(earliest)}-${latest ? short(latest) : "never"}; cal ${short(calendar)}`;
}

function wayOf(span, { id }, { assumptions }) {
  if (span === undefined) return "-";
  const { origin, warmth } = span;
  const isBloom = assumptions.some((text) => text.startsWith(`${id}: full bloom about`));
  if (isBloom) return "warmth, bloom";
  if (warmth?.isFollowed) return warmth.isHeldBack ? "warmth, held" : "warmth";
  return origin.startsWith("no sooner") ? "with tomato" : "calendar";
}

/** With a mark where warmth does not bring it, and the calendar's date stands. */
function firstPick({ stages }) {
  const pick = stages.find(({ stage }) => stage === "harvest");
  const isReached = pick?.warmth === undefined || pick.warmth.day !== undefined;
  return short(pick?.from) + (isReached ? "" : "*");
}

function lastPick({ stages }, { season, frost }) {
  const last = stages.at(-1)?.to;
  if (last === season.to) return `${short(last)} season`;
  return `${short(last)} ${last === frost?.firstAutumn?.day ? "frost" : "lengths"}`;
}

function fedDays(plan, id) {
  return plan.rounds.filter(({ beds }) =>
    beds.some(({ mixes }) => mixes.some((mix) => mix.feedings.some((f) => f.planting === id))),
  ).length;
}

function fed(plan, { id, feeding }) {
  if (feeding === undefined) return "not fed";
  const { first, last, why } = feeding;
  return `${short(first)}-${short(last)} ${fedDays(plan, id)}x: ${why}`;
}

const widths = [13, 8, 8, 29, 14, 8, 15, 0];
const indent = widths.reduce((sum, width) => sum + width, 0);
const columns = ["", "planted", "shows", "by warmth; calendar", "way", "pick", "last pick", "fed"];

/** The last cell goes on below itself where 160 columns do not hold it. */
function line(cells) {
  const text = cells
    .map((cell, i) => cell.padEnd(widths[i]))
    .join("")
    .trimEnd();
  if (text.length <= 160) return text;
  const end = text.lastIndexOf(" ", 160);
  return `${text.slice(0, end)}\n${" ".repeat(indent)}${text.slice(end + 1)}`;
}

for (const { place, plan } of plans) {
  console.log(`${place.name}: ${plan.garden.climate.origin}`);
  console.log(`  ${frostLine(plan.garden)}; planted out ${short(place.out)}`);
}
console.log(`
The first flower, head or bulb shows on a day with its band by warmth and the calendar's date beside it.
* not reached by warmth before the season's end: the calendar's date.`);
for (const { id } of plans[0].plan.plantings) {
  console.log(`\n${id}`);
  console.log(line(columns));
  for (const { place, plan } of plans) {
    const planting = plan.plantings.find((one) => one.id === id);
    const shows = showing(planting);
    const planted = gardenIn(place)
      .beds.flatMap(({ plantings }) => plantings)
      .find((one) => one.id === id);
    const cells = [short(planted.transplanted ?? planted.sown), short(shows?.from), band(shows)];
    const life = [
      wayOf(shows, planting, plan),
      firstPick(planting),
      lastPick(planting, plan.garden),
    ];
    console.log(line([place.name, ...cells, ...life, fed(plan, planting)]));
  }
}
