import { isIP } from "node:net";

/** Whether an IP address can be reached from this computer only. */
export function isLoopback(address: string): boolean {
  const ip = address.toLowerCase().replace(/^::ffff:(?=\d+\.)/, "");
  return ip === "::1" || (isIP(ip) === 4 && ip.startsWith("127."));
}

/**
 * Whether a Host header names this computer. A page elsewhere can point its own name at 127.0.0.1 and
 * read what answers there (DNS rebinding); its name in the header gives it away. No header: no browser.
 */
export function namesLoopback(host: string | undefined): boolean {
  if (host === undefined) return true;
  const match = /^(?:\[([0-9a-f:.]+)\]|([^:[\]]+))(?::\d*)?$/i.exec(host);
  const name = match?.[1] ?? match?.[2];
  if (name === undefined) return false;
  return name.toLowerCase() === "localhost" || isLoopback(name);
}
