import { once } from "node:events";
import { connect, type Socket } from "node:net";
import { describe, expect, onTestFinished, test } from "vitest";
import { networkOf } from "../../src/serve/connections.js";
import { aServer, exchange, get, until } from "./a-server.js";

// Addresses for documentation: RFC 5737 and RFC 3849; the last two forms RFC 4291 section 2.2.
test.each([
  ["192.0.2.7", "192.0.2.7"],
  ["::ffff:192.0.2.7", "192.0.2.7"],
  ["2001:db8:1:2:3:4:5:6", "2001:db8:1:2::/64"],
  ["2001:0DB8:0001:0002::6", "2001:db8:1:2::/64"],
  ["2001:db8::1", "2001:db8:0:0::/64"],
  ["2001:db8:0:0:1::", "2001:db8:0:0::/64"],
  ["fe80::1%eth0", "fe80:0:0:0::/64"],
  ["::1", "0:0:0:0::/64"],
  ["::192.0.2.7", "0:0:0:0::/64"],
  ["-", "-"],
])("%s is of %s", (address, network) => {
  expect(networkOf(address)).toBe(network);
});

describe("connections of one address", () => {
  const limits = { connectionsEach: 4 };
  const end = (sockets: readonly Socket[]): void => {
    for (const socket of sockets) socket.destroy();
  };
  const opened = async (port: number, count: number): Promise<readonly Socket[]> => {
    const sockets = Array.from({ length: count }, () => connect(port, "127.0.0.1"));
    onTestFinished(() => {
      end(sockets);
    });
    for (const socket of sockets) socket.on("error", () => undefined);
    await Promise.all(sockets.map((socket) => once(socket, "connect")));
    return sockets;
  };
  const ask = "GET /weir.ics HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n";

  test("beyond the limit are closed, the log says so once, and there is room again", async () => {
    const { port, lines } = await aServer(onTestFinished, { limits });
    const sockets = await opened(port, 4);
    for (let i = 0; i < 3; i++) expect(await exchange(port, ask, { halfOpen: true })).toBe("");
    expect(lines.filter((line) => line.includes("4 connections"))).toEqual([
      "127.0.0.1 has 4 connections open: more are closed at once",
    ]);
    end(sockets);
    await until(async () => (await get(port, "/weir.ics").catch(() => undefined))?.status === 200);
  });

  test("are those of all visitors behind a proxy, and limited by the total alone", async () => {
    const { port } = await aServer(onTestFinished, { url: "https://garden.example" });
    await opened(port, 40);
    expect(await exchange(port, ask, { halfOpen: true })).toMatch(/^HTTP\/1\.1 404 /);
  });
});
