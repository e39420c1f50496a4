/** What a POST carries: read with limits, and its fields. */
// @ts-nocheck

import type { IncomingMessage } from "node:http";
import type { Fields } from "../ticks/index.js";

export type Body =
  | { readonly kind: "whole"; readonly bytes: Buffer }
  | { readonly kind: "too-large" }
  /** The client has left, or was too slow. */
  | { readonly kind: "gone" };

/** Beyond its limit a body is heard out that far, so that a browser gets to read why it is refused. */
const heardOut = 4;

export function readBody(request: IncomingMessage, mostBytes: number): Promise<Body> {
  const told = Number(request.headers["content-length"] ?? 0);
  if (told > heardOut * mostBytes) return Promise.resolve({ kind: "too-large" });
  return new Promise((resolve) => {
    const parts: Buffer[] = [];
    let length = 0;
    request.on("data", (part: Buffer) => {
      length += part.length;
      if (length <= mostBytes) parts.push(part);
      else parts.length = 0;
      if (length > heardOut * mostBytes) {
        request.pause();
        resolve({ kind: "too-large" });
      }
    });
    request.on("end", () => {
      resolve(
        length > mostBytes
          ? { kind: "too-large" }
          : { kind: "whole", bytes: Buffer.concat(parts, length) },
      );
    });
    const leave = (): void => {
      resolve({ kind: "gone" });
    };
    request.on("error", leave).on("close", leave);
  });
}

/** `application/x-www-form-urlencoded`, UTF-8; undefined for what no browser would send. */
export function fieldsIn(bytes: Buffer): Fields | undefined {
  const text = bytes.toString("latin1");
  // Everything else is escaped (URL Living Standard, application/x-www-form-urlencoded serializing).
  if (!/^[\x21-\x7e]*$/.test(text)) return undefined;
  try {
    return text
      .split("&")
      .filter((pair) => pair !== "")
      .map((pair) => {
        const end = pair.includes("=") ? pair.indexOf("=") : pair.length;
        return [decoded(pair.slice(0, end)), decoded(pair.slice(end + 1))];
      });
  } catch {
    // No UTF-8, or half an escape.
    return undefined;
  }
}

function decoded(text: string): string {
  return decodeURIComponent(text.replaceAll("+", " "));
}

/** The one value of a field, if there is exactly one. */
export function only(fields: Fields, wanted: string): string | undefined {
  const values = fields.filter(([name]) => name === wanted);
  return values.length === 1 ? values[0]?.[1] : undefined;
}
