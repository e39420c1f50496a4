/** What growers do and forget to do: each act changes the garden file, or finds nothing to change. */
// @ts-nocheck

import { addDays, type Day, weekdays } from "../../../src/dates.js";
import type { Dice } from "./dice.js";
import { awayFrom, type EntryDraft, inventedPlanting, type PlantingDraft } from "./gardens.js";
import { type Grower, reread, runOn, save, truthOf } from "./grower.js";
import { daysApart, gapsOf, plantingsOf, renamedIn, type ToldFeeding } from "./truth.js";

/** @returns what was done, in words; undefined where there was nothing to do */
export type Act = (grower: Grower, dice: Dice, today: Day) => Deed | Promise<Deed>;
export type Deed = string | undefined;

/** Refused by the `log` command, which is to take any round that was published. */
export class LogRefused extends Error {}

const lately = 12;

/** Told feedings of the last days of which nobody has spoken. */
function silentLately(grower: Grower, today: Day): ToldFeeding[] {
  return truthOf(grower, today).silent.filter(
    ({ day, planting }) =>
      daysApart(day, today) <= lately &&
      plantingsOf(grower.garden).some(({ id }) => id === planting),
  );
}

function write(grower: Grower, entry: EntryDraft): string {
  grower.garden.log = [...(grower.garden.log ?? []), entry];
  grower.spokenOf.add(entry.on);
  if (entry.round !== undefined) grower.spokenOf.add(entry.round);
  return `log: ${JSON.stringify(entry)}`;
}

/** One planting, all of its bed, or the whole round. */
function target(dice: Dice, { planting, bed, route }: ToldFeeding): Partial<EntryDraft> {
  const which = dice.next();
  if (which < 0.6) return dice.chance(0.5) ? { planting, route } : { planting };
  return which < 0.8 ? { bed } : {};
}

function toldMl({ pours }: ToldFeeding): number {
  return pours.reduce((sum, { ml }) => sum + ml, 0);
}

const logByCommand: Act = async (grower, dice, today) => {
  if (!grower.isNamed) return undefined;
  const told = dice.maybe(silentLately(grower, today));
  if (told === undefined) return undefined;
  const { day, planting, bed } = told;
  const named = dice.pick([[], ["--planting", planting], ["--bed", bed]]);
  const argv = ["--on", day, ...named];
  const { code, stderr } = await runOn(grower, today, `${today}T19:00:00Z`, "log", ...argv);
  if (code !== 0) throw new LogRefused(`log ${argv.join(" ")}: ${stderr}`);
  reread(grower);
  grower.spokenOf.add(day);
  return `log ${argv.join(" ")}`;
};

const logAmount: Act = (grower, dice, today) => {
  const told = dice.maybe(silentLately(grower, today));
  if (told === undefined || toldMl(told) === 0) return undefined;
  const stock = `${Math.max(1, Math.round(toldMl(told) * (0.6 + 0.5 * dice.next())))} mL`;
  const batch = told.pours[0]?.batch;
  return write(grower, {
    ...{ on: told.day, planting: told.planting, route: told.route },
    ...(dice.chance(0.7) ? { stock } : {}),
    ...(batch !== undefined && dice.chance(0.4) ? { batch } : {}),
  });
};

const missRound: Act = (grower, dice, today) => {
  const told = dice.maybe(silentLately(grower, today));
  if (told === undefined) return undefined;
  return write(grower, { on: told.day, ...target(dice, told), missed: true });
};

/** Told for one day, fed on another; a little earlier, or later. */
const fedAnotherDay: Act = (grower, dice, today) => {
  const ahead = grower.told
    .filter(({ day }) => day > today && daysApart(day, today) <= 3)
    .flatMap(({ day, mixes }) =>
      mixes.flatMap(({ bed, route, fed, pours }) =>
        fed.map((f) => ({ day, bed, route, ...f, pours })),
      ),
    );
  const told = dice.maybe([...silentLately(grower, today), ...ahead]);
  if (told === undefined) return undefined;
  const { planting, route } = told;
  if (!plantingsOf(grower.garden).some(({ id }) => id === planting)) return undefined;
  const on = addDays(told.day, dice.pick([-3, -2, -1, 1, 2, 3]));
  const gap = gapsOf(grower.plan, grower.garden)(planting, route);
  if (on > today || daysApart(on, told.day) > gap / 2) return undefined;
  return write(grower, {
    ...{ on, planting, route },
    ...(dice.chance(0.5) ? { round: told.day } : {}),
    ...(dice.chance(0.5) && toldMl(told) > 1 ? { stock: `${Math.floor(toldMl(told))} mL` } : {}),
  });
};

const oneMoreFeeding: Act = (grower, dice, today) => {
  const planting = dice.maybe(grower.plan?.plantings.filter(({ fed }) => fed) ?? []);
  if (planting === undefined) return undefined;
  const { id } = planting;
  if (!plantingsOf(grower.garden).some((one) => one.id === id)) return undefined;
  return write(grower, { on: addDays(today, -dice.between(0, 3)), planting: id });
};

const goAway: Act = (grower, dice, today) => {
  const span = awayFrom(dice, addDays(today, dice.between(-8, 15)));
  const { feeding = {} } = grower.garden;
  const away = feeding.away ?? [];
  if (away.some(({ from, to }) => from <= span.to && span.from <= to)) return undefined;
  grower.garden.feeding = { ...feeding, away: [...away, span] };
  grower.isAwayChanged = true;
  return `away: ${span.from} to ${span.to}`;
};

const stayAtHome: Act = (grower, dice, today) => {
  const { feeding = {} } = grower.garden;
  const span = dice.maybe((feeding.away ?? []).filter(({ from }) => from > today));
  if (span === undefined) return undefined;
  const away = (feeding.away ?? []).filter((one) => one !== span);
  grower.garden.feeding = { ...feeding, away };
  grower.isAwayChanged = true;
  return `not away: ${span.from} to ${span.to}`;
};

const otherWeekdays: Act = (grower, dice) => {
  const days = weekdays.filter(() => dice.chance(0.3)).concat(dice.pick(weekdays));
  grower.garden.feeding = { ...grower.garden.feeding, days: [...new Set(days)] };
  return `feeding days: ${days.join(" ")}`;
};

const otherGrouping: Act = (grower) => {
  const { calendar = {} } = grower.garden;
  const group = calendar.group === "bed" ? "round" : "bed";
  grower.garden.calendar = { ...calendar, group };
  return `group: ${group}`;
};

function anyPlanting(grower: Grower, dice: Dice): PlantingDraft | undefined {
  return dice.maybe(plantingsOf(grower.garden).filter(({ removed }) => removed === undefined));
}

const addPlanting: Act = (grower, dice, today) => {
  const bed = dice.maybe(grower.garden.beds);
  if (bed === undefined) return undefined;
  const id = `new-${today}`;
  if (plantingsOf(grower.garden).some((planting) => planting.id === id)) return undefined;
  const planting = inventedPlanting(dice, id, addDays(today, -dice.between(0, 20)));
  bed.plantings = [...bed.plantings, planting];
  return `new planting in ${bed.id}: ${JSON.stringify(planting)}`;
};

const removePlanting: Act = (grower, dice, today) => {
  const planting = anyPlanting(grower, dice);
  if (planting === undefined) return undefined;
  planting.removed = addDays(today, -dice.between(0, 12));
  return `${planting.id} removed: ${planting.removed}`;
};

function isNamedElsewhere({ garden }: Grower, id: string): boolean {
  return [...(garden.log ?? []), ...(garden.signs ?? [])].some((one) => one.planting === id);
}

const deletePlanting: Act = (grower, dice) => {
  const planting = anyPlanting(grower, dice);
  if (planting === undefined || isNamedElsewhere(grower, planting.id)) return undefined;
  for (const bed of grower.garden.beds)
    bed.plantings = bed.plantings.filter((one) => one !== planting);
  return `${planting.id} deleted`;
};

/** Only one of its crop in its bed, so that there is no doubt which one it was. */
const renamePlanting: Act = (grower, dice, today) => {
  const planting = anyPlanting(grower, dice);
  const bed = grower.garden.beds.find(({ plantings }) => plantings.includes(planting as never));
  if (planting === undefined || bed === undefined) return undefined;
  const crops = new Map((grower.plan?.plantings ?? []).map(({ id, crop }) => [id, crop]));
  const crop = crops.get(planting.id);
  const isAlone = [...crops].filter(([, other]) => other === crop).length === 1;
  const isNew = plantingsOf(grower.garden).some(({ id }) => !crops.has(id));
  if (crop === undefined || !isAlone || isNew) return undefined;
  const { id: from } = planting;
  const to = `renamed-${today}`;
  planting.id = to;
  for (const one of [...(grower.garden.log ?? []), ...(grower.garden.signs ?? [])])
    if (one.planting === from) {
      one.planting = to;
      grower.spokenOf.add(one.on);
    }
  grower.told = renamedIn(grower.told, from, to);
  return `${from} is now ${to}`;
};

const plantedOtherDay: Act = (grower, dice, today) => {
  const planting = anyPlanting(grower, dice);
  if (planting?.transplanted === undefined) return undefined;
  const on = addDays(planting.transplanted, dice.between(-6, 12));
  if (on > today && planting.transplanted <= today) return undefined;
  planting.transplanted = on;
  return `${planting.id} transplanted: ${on}`;
};

const otherWater: Act = (grower, dice) => {
  const planting = anyPlanting(grower, dice);
  if (planting === undefined) return undefined;
  planting.water = dice.pick(["3 L", "7.5 L", "1.5 gal"]);
  return `${planting.id} water: ${planting.water}`;
};

const signSeen: Act = (grower, dice, today) => {
  const planting = anyPlanting(grower, dice);
  if (planting === undefined) return undefined;
  const sign = dice.pick(["blossom-end-rot", "tipburn", "leaf-edge-scorch", "white-crust"]);
  const on = addDays(today, -dice.between(0, 2));
  grower.garden.signs = [...(grower.garden.signs ?? []), { on, planting: planting.id, sign }];
  return `sign: ${planting.id} ${sign} on ${on}`;
};

const otherFeedLogged: Act = (grower, dice, today) => {
  const feed = dice.maybe(grower.garden.feeds ?? []);
  if (feed === undefined) return undefined;
  return write(grower, { on: addDays(today, -dice.between(0, 4)), feed: feed.name });
};

/** Acts one on another by their names, so that a seed plays the same season after acts are added here. */
export const acts: Readonly<Record<string, Act>> = {
  logByCommand,
  logAmount,
  missRound,
  fedAnotherDay,
  oneMoreFeeding,
  goAway,
  stayAtHome,
  otherWeekdays,
  otherGrouping,
  addPlanting,
  removePlanting,
  deletePlanting,
  renamePlanting,
  plantedOtherDay,
  otherWater,
  signSeen,
  otherFeedLogged,
};

/** @returns what was done; the garden file is written */
export async function doAct(act: Act, grower: Grower, dice: Dice, today: Day): Promise<Deed> {
  const deed = await act(grower, dice, today);
  if (deed !== undefined) save(grower);
  return deed;
}
