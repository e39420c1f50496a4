// @ts-nocheck
import { networkInterfaces } from "node:os";
import { isIPv6 } from "node:net";

/** Where one garden is found. */
export interface SubscribeLinks {
  /** Opens a calendar program where there is one. */
  readonly webcal: string;
  /** The same calendar for programs that ask for an address. */
  readonly http: string;
  /** The garden's page. */
  readonly page: string;
  /** QR code of the page, for other devices; absent where none could reach it. */
  readonly qrSvg?: string;
}

/** @param base `http://host:port` or `https://host/folder`, with the secret if there is one */
export function subscribeLinks(base: string, name: string, pageSuffix = ""): SubscribeLinks {
  const http = `${base}/${name}.ics`;
  const page = `${base}/${name}${pageSuffix}`;
  return { webcal: http.replace(/^https?:/, "webcal:"), http, page };
}

export function originOf(scheme: "http" | "https", address: string, port: number): string {
  return `${scheme}://${isIPv6(address) ? `[${address}]` : address}:${port}`;
}

/**
 * Addresses at which others reach a server that listens on `address`: itself, or for "all addresses"
 * those of the computer, IPv4 first, as people type them more easily.
 */
export function reachableAddresses(
  address: string,
  interfaces: ReturnType<typeof networkInterfaces> = networkInterfaces(),
): string[] {
  if (address !== "0.0.0.0" && address !== "::") return [address];
  const own = Object.values(interfaces)
    .flatMap((list) => list ?? [])
    // Link-local IPv6 addresses mean nothing without the reader's own interface name.
    .filter((one) => !one.internal && !/^fe80:/i.test(one.address))
    .filter((one) => address === "::" || one.family === "IPv4")
    .sort((a, b) => a.family.localeCompare(b.family))
    .map((one) => one.address);
  return own.length > 0 ? own : [address === "::" ? "::1" : "127.0.0.1"];
}
