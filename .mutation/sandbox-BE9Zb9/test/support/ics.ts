// @ts-nocheck
import ICAL from "ical.js";

/** A calendar file as another program reads it. */
export function readIcs(text: string): ICAL.Component {
  return new ICAL.Component(ICAL.parse(text) as unknown[]);
}

export function eventsIn(text: string): ICAL.Event[] {
  return readIcs(text)
    .getAllSubcomponents("vevent")
    .map((component) => new ICAL.Event(component));
}

/** The first value of a property, as ical.js gives it in text form. */
export function valueOf(component: ICAL.Component, name: string): string | undefined {
  const value = component.getFirstPropertyValue(name);
  return value === null ? undefined : String(value);
}

/** Physical lines, without their CRLF. Fails when a line ends in anything else. */
export function linesOf(text: string): string[] {
  if (/\r(?!\n)|(?<!\r)\n/.test(text) || !text.endsWith("\r\n")) {
    throw new Error("a line does not end in CRLF");
  }
  return text.slice(0, -2).split("\r\n");
}

/** Content lines as RFC 5545 section 3.1 unfolds them. */
export function contentLines(text: string): string[] {
  return linesOf(text.replace(/\r\n[ \t]/g, ""));
}

export function octets(text: string): number {
  return Buffer.byteLength(text, "utf8");
}
