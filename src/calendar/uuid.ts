import { sha1 } from "./sha1.js";

/**
 * Name-based UUID, version 5 (RFC 9562 section 5.5): the same namespace and name give the same UUID.
 *
 * @param namespace a UUID in its text form
 * @example uuidV5("6ba7b810-9dad-11d1-80b4-00c04fd430c8", "www.example.com") // "2ed6657d-e927-568b-95e1-2665a8aea6a2"
 */
export function uuidV5(namespace: string, name: string): string {
  const space = BigInt(`0x${namespace.replaceAll("-", "")}`);
  const nameBytes = new TextEncoder().encode(name);
  const bytes = new Uint8Array(16 + nameBytes.length);
  const view = new DataView(bytes.buffer);
  view.setBigUint64(0, space >> 64n);
  view.setBigUint64(8, space & 0xffff_ffff_ffff_ffffn);
  bytes.set(nameBytes, 16);
  const id = sha1(bytes).subarray(0, 16);
  id[6] = ((id[6] ?? 0) & 0x0f) | 0x50;
  id[8] = ((id[8] ?? 0) & 0x3f) | 0x80;
  const hex = Array.from(id, (byte) => byte.toString(16).padStart(2, "0")).join("");
  return hex.replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, "$1-$2-$3-$4-$5");
}
