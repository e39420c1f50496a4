/**
 * Programs outside the project that read calendar files, as Debian packs them: libical (libical-dev and
 * a C compiler), python3-icalendar and khal. Where one is not there its checks are skipped, and the
 * test run counts them. Python is the system's own, since another one on PATH would not see Debian's
 * packages.
 */
import { spawnSync } from "node:child_process";
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type ICAL from "ical.js";
import { addDays, day } from "../../src/dates.js";
import { byText } from "../../src/values.js";
import { eventsIn } from "../support/ics.js";
import { scratchFile, scratchFolder } from "../support/run-cli.js";

/** One event. A day is its ISO text; a time is seconds since 1970 in UTC. The end is the first day or second after. */
export interface EventRead {
  readonly uid: string;
  readonly start: string | number;
  readonly end: string | number;
  readonly title: string;
}

export interface Reader {
  readonly name: string;
  readonly there: boolean;
  /** Throws with what the reader says where it takes a file for wrong. */
  readonly read: (calendar: string) => readonly EventRead[];
}

const python = "/usr/bin/python3";
const beside = (name: string): string => new URL(name, import.meta.url).pathname;

function works(command: string, ...args: readonly string[]): boolean {
  return spawnSync(command, args).status === 0;
}

function output(command: string, ...args: readonly string[]): string {
  const { status, stdout, stderr } = spawnSync(command, args, { encoding: "utf8" });
  if (status !== 0) throw new Error(stderr);
  return stdout;
}

function rows(text: string): string[][] {
  return text
    .split("\n")
    .filter((line) => line !== "")
    .map((line) => line.split("\t"));
}

/** `20270610` is a day, anything longer seconds. */
function dayOrSeconds(text = ""): string | number {
  const daily = /^(\d{4})(\d\d)(\d\d)$/.exec(text);
  return daily === null ? Number(text) : daily.slice(1).join("-");
}

function eventsOfRows(text: string): EventRead[] {
  return rows(text).map(([uid = "", start, end, title = ""]) => ({
    uid,
    start: dayOrSeconds(start),
    end: dayOrSeconds(end),
    title,
  }));
}

function libical(): Reader {
  const program = join(scratchFolder(), "read-by-libical");
  return {
    name: "libical",
    there: works("cc", "-o", program, beside("libical.c"), "-lical"),
    read: (calendar) => eventsOfRows(output(program, scratchFile("garden.ics", calendar))),
  };
}

const icalendar: Reader = {
  name: "python3-icalendar",
  there: works(python, "-c", "import icalendar"),
  read: (calendar) =>
    eventsOfRows(output(python, beside("read_icalendar.py"), scratchFile("garden.ics", calendar))),
};

/** Imported into a calendar of its own and listed, as its user sees it. */
const khal: Reader = {
  name: "khal",
  there: works("khal", "--version"),
  read: (calendar) => {
    const folder = scratchFolder();
    const settings = join(folder, "settings");
    mkdirSync(join(folder, "garden"));
    writeFileSync(settings, khalSettings(folder));
    const run = (...args: string[]) => output("khal", "-c", settings, ...args);
    run("import", "--batch", "-a", "garden", scratchFile("garden.ics", calendar));
    const fields = ["uid", "all-day", "start-long", "end-long", "title"].map((f) => `{${f}}`);
    const span = ["2024-01-01", "2100d"];
    return rows(run("list", "--once", "-df", "", "-f", fields.join("\t"), ...span)).map(khalEvent);
  },
};

function khalEvent([uid = "", allDay, start = "", end = "", title = ""]: readonly string[]) {
  return allDay === "True"
    ? // It names the last day, not the one after it.
      { uid, start, end: addDays(day(end), 1), title }
    : { uid, start: Date.parse(`${start}Z`) / 1000, end: Date.parse(`${end}Z`) / 1000, title };
}

function khalSettings(folder: string): string {
  const times = ["datetimeformat", "longdatetimeformat"].map((key) => `${key} = %Y-%m-%dT%H:%M`);
  return [
    ...["[calendars]", "[[garden]]", `path = ${join(folder, "garden")}`],
    ...["[sqlite]", `path = ${join(folder, "khal.db")}`],
    ...["[locale]", "local_timezone = UTC", "default_timezone = UTC", "timeformat = %H:%M"],
    ...["dateformat = %Y-%m-%d", "longdateformat = %Y-%m-%d", ...times, ""],
  ].join("\n");
}

const icalJs: Reader = {
  name: "ical.js",
  there: true,
  read: (calendar) => {
    const said = (time: ICAL.Time) => (time.isDate ? time.toString() : time.toUnixTime());
    return eventsIn(calendar).map(({ uid, startDate, endDate, summary }) => ({
      uid,
      start: said(startDate),
      end: said(endDate),
      title: summary,
    }));
  },
};

export const readers: readonly Reader[] = [libical(), icalendar, khal, icalJs];

export function inOrder(events: readonly EventRead[]): EventRead[] {
  return [...events].sort((a, b) => byText(a.uid, b.uid));
}

/** The moments of local times, seconds since 1970, by the system's table of zones. */
export function moments(
  times: readonly { readonly zone: string; readonly local: string }[],
): number[] {
  const asked = times.map(({ zone, local }) => `${zone} ${local}`);
  return rows(output(python, beside("read_zoneinfo.py"), ...asked)).map(([text]) => Number(text));
}

export const zonesThere = works(
  python,
  beside("read_zoneinfo.py"),
  "Europe/Berlin 2024-03-31T02:30",
);
