/** Values of options, read as they are given; what cannot be read is wrong usage. */
import { InvalidArgumentError } from "commander";
import { type Day, parseDay } from "../dates.js";
import type { Part } from "../serve/index.js";

export function dayOption(text: string): Day {
  const day = parseDay(text);
  if (day === undefined) throw new InvalidArgumentError("Write it like 2027-06-01.");
  return day;
}

/** An instant, ISO 8601 in UTC. */
export function stampOption(text: string): string {
  if (
    !/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2}(\.\d+)?)?Z$/.test(text) ||
    Number.isNaN(Date.parse(text))
  )
    throw new InvalidArgumentError("Write it in UTC, like 2027-03-01T08:00:00Z.");
  return text;
}

export function wholeNumberOption(text: string): number {
  const value = Number(text);
  if (!/^\d+$/.test(text) || value > 100_000)
    throw new InvalidArgumentError("Write a whole number, like 3.");
  return value;
}

/** `7.5` or `7.5 mm`. */
export function millimetresOption(text: string): number {
  const match = /^(\d+(?:\.\d+)?)\s*(?:mm)?$/.exec(text.trim());
  if (!match) throw new InvalidArgumentError("Write millimetres, like 7.5.");
  return Number(match[1]);
}

export function portOption(text: string): number {
  const port = Number(text);
  if (!/^\d{1,5}$/.test(text) || port > 65_535)
    throw new InvalidArgumentError("Write a number from 0 to 65535.");
  return port;
}

/** Which part, of how many. */
export function partOption(text: string): Part {
  const [number = 0, of = 0] = /^\d{1,6}\/\d{1,6}$/.test(text) ? text.split("/").map(Number) : [];
  if (number < 1 || number > of)
    throw new InvalidArgumentError("Write which part, of how many: 1/4, 2/4, 3/4 and 4/4.");
  return { number, of };
}

export function urlOption(text: string): string {
  const isUrl = URL.canParse(text) && /^https?:$/.test(new URL(text).protocol);
  if (!isUrl) throw new InvalidArgumentError("Write it like https://example.org/gardens/.");
  return text;
}
