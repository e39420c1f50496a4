import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readEarlierCalendar } from "../../src/calendar/earlier-calendar.js";
import { day } from "../../src/dates.js";
import { hiddenIn } from "../../src/legible.js";
import { aPlan, aRound, aWarning, roundsOn } from "../support/a-plan.js";
import { earlierOf, rewritten, textOf } from "../support/calendars.js";

const plan = aPlan({
  rounds: [aRound(), aRound({ day: day("2027-06-19"), timeOfDay: "18:30" })],
  warnings: [aWarning({ day: day("2027-07-15"), message: "größer, als das Beet; 水 ".repeat(5) })],
  garden: {
    calendar: { group: "bed", remindersMinBefore: [-480, 30], color: "teal", refreshHours: 6 },
  },
});
const text = textOf(plan);

function refusal(changed: string, gardenId = "weir-cottage") {
  const result = readEarlierCalendar(changed, gardenId);
  return result.ok ? undefined : result.problems[0];
}

describe("reading our own calendar", () => {
  it("gives each event its names, history and exact text", () => {
    const { events, gardenId } = earlierOf(text);
    expect(gardenId).toBe("weir-cottage");
    expect(
      events.map(({ key, day: on, sequence, cancelled, timezone }) => ({
        key,
        on,
        sequence,
        cancelled,
        timezone,
      })),
    ).toEqual([
      {
        key: "feeding/south/2027-06-12",
        on: "2027-06-12",
        sequence: 0,
        cancelled: false,
        timezone: undefined,
      },
      {
        key: "feeding/south/2027-06-19",
        on: "2027-06-19",
        sequence: 0,
        cancelled: false,
        timezone: "Europe/Dublin",
      },
      {
        key: "notice/window-missed//2027-07-15",
        on: "2027-07-15",
        sequence: 0,
        cancelled: false,
        timezone: undefined,
      },
    ]);
    for (const event of events) expect(text).toContain(event.text);
    expect(events[0]).toMatchObject({
      created: "2027-03-01T00:00:00Z",
      modified: "2027-03-01T00:00:00Z",
    });
  });

  it("loses nothing: written again it is the same, byte for byte", () => {
    expect(rewritten(plan, text)).toBe(text);
  });

  it("reads a calendar without events", () => {
    expect(earlierOf(textOf(aPlan({ rounds: [] }))).events).toEqual([]);
  });

  it("reads names that need escaping", () => {
    const id = "beds; a, b\\c";
    const odd = textOf(aPlan({ garden: { id } }));
    expect(earlierOf(odd, id).events).toHaveLength(1);
  });
});

describe("a file that is not ours", () => {
  it.each([
    ["", "an empty file"],
    ["garden: Weir Cottage\n", "a garden file"],
    ["BEGIN:VCARD\r\nEND:VCARD\r\n", "an address"],
  ])("is refused as no calendar: %j", (other) => {
    expect(refusal(other)).toMatchObject({ code: "not-a-calendar" });
  });

  it("is refused when another program wrote it, though it is a calendar", () => {
    expect(
      refusal(text.replace("PRODID:-//Feedround//Feedround//EN", "PRODID:-//Other//EN")),
    ).toMatchObject({
      code: "not-ours",
      message: 'this calendar was written by another program, "-//Other//EN"',
    });
  });

  it.each([
    ["PRODID:-//Feedround//Feedround//EN", `PRODID:${"é".repeat(1000)}`],
    ["X-FEEDROUND-GARDEN:weir-cottage", `X-FEEDROUND-GARDEN:mill\\n\u001b[2J${"é".repeat(1000)}`],
    ["END:VEVENT", `END:${"VEVENT\u202e".repeat(1000)}`],
  ])("is never quoted at length, nor as it acts: %s", (ours, theirs) => {
    const { message, mend } = refusal(text.replace(ours, theirs)) ?? { message: "", mend: "" };
    expect(message.length).toBeLessThan(250);
    expect(mend.length).toBeLessThan(350);
    expect(`${message}${mend}`).toMatch(/\.\.\.["` ]/);
    expect(hiddenIn(message + mend)).toBeUndefined();
  });

  it("is refused when it belongs to another garden, and says to which", () => {
    expect(refusal(text, "mill-house")).toMatchObject({
      code: "other-garden",
      message: 'this calendar belongs to the garden "weir-cottage", not to "mill-house"',
    });
  });
});

describe("a file of which only the form was changed", () => {
  const whole = earlierOf(text).events;
  const bare = (name: string): RegExp => new RegExp(`^${name}:.*\r\n`, "gm");

  it.each([
    ["a mark of byte order before it", `\ufeff${text}`],
    ["without its last line break", text.slice(0, -2)],
    ["line ends of another system", text.replaceAll("\r\n", "\n")],
    ["line ends of an old system", text.replaceAll("\r\n", "\r")],
    ["line ends of several systems", text.replaceAll("\r\n", "\n").replace("EN\n", "EN\r\n")],
    ["blank lines", text.replaceAll("BEGIN:VEVENT", "\r\nBEGIN:VEVENT")],
    ["blank lines at the end", `${text}\r\n\r\n`],
    ["blank lines within events", text.replaceAll("TRANSP:", "\r\nTRANSP:")],
    ["small letters", text.replace(/^[A-Z-]+(?=[:;])/gm, (name) => name.toLowerCase())],
    ["small letters everywhere", text.replace(/^(BEGIN|END):.*$/gm, (line) => line.toLowerCase())],
    ["an event twice", text.replace(/BEGIN:VEVENT[^]*?END:VEVENT\r\n/, "$&$&")],
    ["no SEQUENCE", text.replace(bare("SEQUENCE"), "")],
    ["no DTSTAMP", text.replace(bare("DTSTAMP"), "")],
    ["no CREATED", text.replace(bare("CREATED"), "")],
    ["no LAST-MODIFIED", text.replace(bare("LAST-MODIFIED"), "")],
  ])("is read as it was: %s", (_, changed) => {
    expect(changed).not.toBe(text);
    const { events } = earlierOf(changed);
    // Where a line is put back, it stands behind UID.
    const sorted = (one: { text: string }) => ({ ...one, text: one.text.split("\r\n").sort() });
    expect(events.map(sorted)).toEqual(whole.map(sorted));
  });

  it("keeps what is folded elsewhere, and lines of other programs, as they stand", () => {
    const odd = text
      .replace(/^DESCRIPTION:(.{20})/m, "DESCRIPTION:$1\r\n\t")
      .replace("TRANSP:", "X-OTHER;A=1:yes\r\nTRANSP:");
    const [first] = earlierOf(odd).events;
    expect(odd).toContain(first?.text);
    expect(first?.text).toContain("X-OTHER");
  });
});

describe("a damaged file", () => {
  const line = (needle: string) => text.slice(0, text.indexOf(needle)).split("\r\n").length;

  it.each([
    ["cut off in the middle", text.slice(0, text.length / 2)],
    ["with something after its end", `${text}BEGIN:VCALENDAR\r\nEND:VCALENDAR\r\n`],
    ["with a line that is none", text.replace("TRANSP:TRANSPARENT", "oops")],
    ["without the garden's name", text.replace(/X-FEEDROUND-GARDEN:.*\r\n/, "")],
    ["without a UID", text.replace(/(BEGIN:VEVENT\r\n)UID:.*\r\n/, "$1")],
    ["with a UID that is none", text.replace(/(BEGIN:VEVENT\r\n)UID:.*\r\n/, "$1UID:7\r\n")],
    ["with two SEQUENCEs", text.replace("SEQUENCE:0", "SEQUENCE:0\r\nSEQUENCE:1")],
    ["with a SEQUENCE below zero", text.replace("SEQUENCE:0", "SEQUENCE:-1")],
    ["without a key", text.replace(/X-FEEDROUND-KEY:.*\r\n/, "")],
    [
      "with a key that names no day",
      text.replace(/(X-FEEDROUND-KEY:.*)2027-06-12/, "$12027-02-30"),
    ],
    ["with a moment that is none", text.replace("CREATED:20270301", "CREATED:20270230")],
    ["with a start that is none", text.replace("DATE:20270612", "DATE:June")],
    [
      "with an event in a zone that is none",
      text.replace(/DTSTART[^:]*:20270612.*/, "DTSTART;TZID=Europe/Dublan:20270612T183000"),
    ],
    [
      "with an event twice, in two versions",
      text.replace(/BEGIN:VEVENT[^]*?END:VEVENT\r\n/, "$&$&").replace("SEQUENCE:0", "SEQUENCE:1"),
    ],
    ["with two events of one key", text.replace(/(X-FEEDROUND-KEY:.*)2027-06-19/, "$12027-06-12")],
    [
      "with components closed in the wrong order",
      text.replace("END:VALARM\r\nEND:VEVENT", "END:VEVENT\r\nEND:VALARM"),
    ],
    ["with an event left open", text.replace("END:VALARM\r\nEND:VEVENT\r\n", "END:VALARM\r\n")],
    [
      "with a broken record of a former event",
      text.replace("COLOR:", "X-FEEDROUND-RETIRED:x 1\r\nCOLOR:"),
    ],
  ])("is refused: %s", (_, changed) => {
    expect(changed).not.toBe(text);
    expect(refusal(changed)).toMatchObject({ code: "damaged" });
    expect(refusal(changed)?.message).toMatch(/^this calendar file is damaged: /);
    expect(refusal(changed)?.mend).toMatch(/another name/);
  });

  it("is refused with the line of the damage", () => {
    const changed = text.replace("SEQUENCE:0", "SEQUENCE:none");
    expect(refusal(changed)?.at).toEqual({ line: line("BEGIN:VEVENT"), column: 1 });
    const odd = text.replace("TRANSP:TRANSPARENT", "oops");
    expect(refusal(odd)?.at).toEqual({ line: line("TRANSP:TRANSPARENT"), column: 1 });
  });

  it("never makes the reader fail, whatever piece of it is lost or doubled", () => {
    fc.assert(
      fc.property(
        fc.nat(text.length),
        fc.nat(60),
        fc.string({ maxLength: 5 }),
        (at, length, put) => {
          const changed = text.slice(0, at) + put + text.slice(at + length);
          const result = readEarlierCalendar(changed, "weir-cottage");
          if (!result.ok) expect(result.problems[0]?.at.line).toBeGreaterThan(0);
        },
      ),
      { numRuns: 500 },
    );
  });

  it("never makes the reader fail on any text at all", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (tail) => {
        expect(readEarlierCalendar(`BEGIN:VCALENDAR\r\n${tail}`, "weir-cottage").ok).toBe(false);
      }),
    );
  });
});

it("a row of rounds is read in the order of the file", () => {
  const days = ["2027-05-01", "2027-05-08", "2027-05-15"];
  expect(
    earlierOf(textOf(aPlan({ rounds: roundsOn(days) }))).events.map((event) => event.day),
  ).toEqual(days);
});
