/** How many connections one network may have open. */
import type { Server, Socket } from "node:net";
import { isIPv6 } from "node:net";

/**
 * Whose address it is: itself, but of an IPv6 address its first 64 bits, since whoever has one has all
 * of those (common practice, no source).
 */
export function networkOf(address: string): string {
  const plain = address.replace(/^::ffff:(?=\d+\.)/i, "").replace(/%.*$/, "");
  if (!isIPv6(plain)) return plain;
  const [first = [], last] = plain
    .split("::")
    .map((half) => half.split(":").filter((group) => group !== ""));
  const zeros = last ? Array<string>(8 - first.length - last.length).fill("0") : [];
  const groups = [...first, ...zeros].slice(0, 4);
  return `${groups.map((group) => Number.parseInt(group, 16).toString(16)).join(":")}::/64`;
}

/** Closes what a network opens beyond so many; says so once for each time that it is all closed again. */
export function limitConnections(server: Server, most: number, log: (line: string) => void): void {
  const open = new Map<string, number>();
  const told = new Set<string>();
  server.on("connection", (socket: Socket) => {
    const network = networkOf(socket.remoteAddress ?? "-");
    const count = (open.get(network) ?? 0) + 1;
    if (count > most) {
      socket.destroy();
      if (!told.has(network))
        log(`${network} has ${most} connections open: more are closed at once`);
      told.add(network);
      return;
    }
    open.set(network, count);
    socket.once("close", () => {
      const left = (open.get(network) ?? 0) - 1;
      if (left > 0) open.set(network, left);
      else {
        open.delete(network);
        told.delete(network);
      }
    });
  });
}
