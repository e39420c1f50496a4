import { connect } from "node:net";
import { describe, expect, onTestFinished, test } from "vitest";
import { stopOnSignals } from "../../src/serve/signals.js";
import { aServer, get } from "./a-server.js";

const onEnd = onTestFinished;

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
    const { server, port } = await aServer(onEnd, { limits: { stopMs: 100 } });
    const stuck = connect(port, "127.0.0.1");
    stuck.on("error", () => undefined);
    stuck.write("GET /weir HTTP/1.1\r\nHost: loc");
    await new Promise((resolve) => setTimeout(resolve, 50));
    const beganMs = performance.now();
    await Promise.all([server.stop(), server.stop()]);
    expect(performance.now() - beganMs).toBeLessThan(1500);
  });
});
