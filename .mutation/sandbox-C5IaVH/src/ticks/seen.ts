/** Marks by which two states of a thing are told apart. */
// @ts-nocheck

import { inOneOrder } from "../values.js";

/** Where a file says nothing of a thing. */
export const nothingSeen = "-";

/** 64 letters that stand for themselves in a form and in an address. */
const letters = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz_~";

/** The same for the same value, whatever the order of its keys. */
export function markOf(value: unknown): string {
  let hash = hashOf(inOneOrder(value));
  let mark = "";
  for (let i = 0; i < 6; i++) {
    mark += letters[hash % 64] ?? "";
    hash = Math.floor(hash / 64);
  }
  return mark;
}

/** FNV-1a, 32 bits (RFC 9923), over UTF-16 units: for telling states apart, not for keeping secrets. */
function hashOf(text: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return hash >>> 0;
}
