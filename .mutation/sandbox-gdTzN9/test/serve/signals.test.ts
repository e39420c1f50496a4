// @ts-nocheck
import { connect } from "node:net";
import { describe, expect, onTestFinished, test } from "vitest";
import { stopOnSignals } from "../../src/serve/signals.js";
import { aServer, get } from "./a-server.js";

const onEnd = onTestFinished;
/** Nothing but the stop ends a connection. */
const endless = { headersMs: 0, requestMs: 0, idleMs: 0 };

describe("a signal to end", () => {
  test.each(["SIGTERM", "SIGINT"] as const)(
    "%s stops the server: no connection, timer or listener stays",
    async (signal) => {
      const { server, port } = await aServer(onEnd, { limits: { stopMs: 100 } });
      const idle = connect(port, "127.0.0.1");
      idle.on("error", () => undefined);
      const closed = new Promise((resolve) => idle.once("close", resolve));
      await new Promise((resolve) => idle.once("connect", resolve));
      const before = process.listenerCount(signal);
      const stopped = stopOnSignals(server.stop);
      process.kill(process.pid, signal);
      expect(await stopped).toBe(signal);
      await closed;
      expect(process.listenerCount(signal)).toBe(before);
      await expect(get(port, "/weir.ics")).rejects.toThrow("ECONNREFUSED");
    },
  );

  test("connections that never end are cut after a moment", async () => {
    const { server, port } = await aServer(onEnd, { limits: { ...endless, stopMs: 100 } });
    const stuck = connect(port, "127.0.0.1");
    stuck.on("error", () => undefined);
    stuck.write("GET /weir HTTP/1.1\r\nHost: loc");
    const cut = new Promise((resolve) => stuck.once("close", resolve));
    // Answered after the stuck one was taken up.
    expect((await get(port, "/weir.ics")).status).toBe(200);
    await Promise.all([server.stop(), server.stop(), cut]);
  });
});
