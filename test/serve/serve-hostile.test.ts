import { connect } from "node:net";
import { describe, expect, onTestFinished, test } from "vitest";
import { aServer, exchange, gardenText, get, until } from "./a-server.js";

const onEnd = onTestFinished;
const crlf = "\r\n";
const usual = { headersMs: 300, requestMs: 500, idleMs: 600, keepAliveMs: 300, checkMs: 50 };

/** A chance of its own, the same in each run (mulberry32, public domain, from memory). */
function dice(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

const hasRoom = async (port: number): Promise<boolean> =>
  (await get(port, "/weir.ics").catch(() => undefined))?.status === 200;

const stillServes = async (port: number): Promise<void> => {
  const { status, body } = await get(port, "/weir.ics");
  expect(status).toBe(200);
  expect(body.toString()).toContain("END:VCALENDAR");
};

describe("hostile requests", () => {
  test.each([
    "/../weir.yaml",
    "/..%2f..%2fetc%2fpasswd",
    "/%2e%2e/%2e%2e/etc/passwd",
    "/....//....//etc/passwd",
    "/..\\..\\weir.yaml",
    "/weir.yaml",
    "/weir.ics/../../weir.yaml",
    "/weir.ics%00.yaml",
    "/weir%0d%0aSet-Cookie:x=1",
    "//etc/passwd",
    "file:///etc/passwd",
    "/__proto__",
    "/constructor",
    "/tostring",
    "/secret",
    "/state/secret",
    `/${"a".repeat(6000)}`,
    `/${"%".repeat(3000)}`,
    `/${"a/".repeat(3000)}`,
  ])("%s leads nowhere", async (target) => {
    const { port } = await aServer(onEnd);
    const answer = await exchange(
      port,
      `GET ${target} HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n`,
    );
    expect(answer).toMatch(/^HTTP\/1\.1 404 Not Found\r\n/);
    expect(answer.toLowerCase()).not.toContain("set-cookie");
    expect(answer).toMatch(/\r\n\r\nThere is nothing here\.\n$/);
  });

  test.each([
    ["a made-up method", `FEED /weir HTTP/1.1${crlf}Host: localhost${crlf}${crlf}`, 400],
    ["a method as long as a header", `${"G".repeat(9000)} / HTTP/1.1${crlf}${crlf}`, 400],
    ["a small-letter method", `get /weir HTTP/1.1${crlf}Host: localhost${crlf}${crlf}`, 400],
    ["no Host", `GET /weir HTTP/1.1${crlf}${crlf}`, 400],
    [
      "two Hosts",
      `GET /weir HTTP/1.1${crlf}Host: localhost${crlf}hOST: localhost${crlf}${crlf}`,
      400,
    ],
    ["two Hosts on HTTP/1.0", `GET / HTTP/1.0${crlf}Host: a${crlf}Host: b${crlf}${crlf}`, 400],
    ["HTTP/0.9, which has no end of a head", `GET /weir${crlf}`, 408],
    ["HTTP/2 in clear text", `PRI * HTTP/2.0${crlf}${crlf}SM${crlf}${crlf}`, 400],
    ["TLS", Buffer.from("16030100a5010000a10303", "hex"), 400],
    ["a zero byte in a header", `GET / HTTP/1.1${crlf}Host: local\0host${crlf}${crlf}`, 400],
    [
      "two lengths",
      `POST / HTTP/1.1${crlf}Host: localhost${crlf}Content-Length: 1${crlf}Content-Length: 2${crlf}${crlf}x`,
      400,
    ],
    [
      "a length and chunks",
      `POST / HTTP/1.1${crlf}Host: localhost${crlf}Content-Length: 5${crlf}Transfer-Encoding: chunked${crlf}${crlf}0${crlf}${crlf}`,
      400,
    ],
    ["a target with a blank", `GET /we ir HTTP/1.1${crlf}Host: localhost${crlf}${crlf}`, 400],
    [
      "headers of 1 MB",
      `GET / HTTP/1.1${crlf}Host: localhost${crlf}X: ${"a".repeat(1_000_000)}${crlf}${crlf}`,
      431,
    ],
    [
      "10,000 headers",
      `GET / HTTP/1.1${crlf}Host: localhost${crlf}${`a: b${crlf}`.repeat(10_000)}${crlf}`,
      431,
    ],
    ["a target of 1 MB", `GET /${"a".repeat(1_000_000)} HTTP/1.1${crlf}${crlf}`, 431],
  ])("%s is refused and the connection ended", async (_, bytes, status) => {
    // Only what never comes is worth a short time: a busy machine is slow with the rest.
    const { port } = await aServer(onEnd, { limits: status === 408 ? usual : {} });
    const answer = await exchange(port, bytes, { halfOpen: true });
    expect(answer).toMatch(new RegExp(`^HTTP/1\\.1 ${status} `));
    expect(answer).toContain("Connection: close");
    await stillServes(port);
  });

  test("a request hidden behind a body is not answered (request smuggling)", async () => {
    const { port } = await aServer(onEnd);
    const hidden = `GET /weir.ics HTTP/1.1${crlf}Host: localhost${crlf}${crlf}`;
    for (const method of ["GET", "POST"]) {
      const answer = await exchange(
        port,
        `${method} / HTTP/1.1${crlf}Host: localhost${crlf}Content-Length: ${hidden.length}${crlf}${crlf}${hidden}`,
      );
      expect(answer.match(/^HTTP\/1\.1/gm)).toHaveLength(1);
      expect(answer).not.toContain("VCALENDAR");
    }
  });

  test("a body without end is not read: the answer comes at once and the connection ends", async () => {
    const { port } = await aServer(onEnd);
    for (const method of ["GET", "POST"]) {
      const head = `${method} /weir HTTP/1.1${crlf}Host: localhost${crlf}Content-Length: 1000000000000${crlf}${crlf}`;
      const answer = await exchange(port, head, { halfOpen: true });
      expect(answer).toMatch(method === "GET" ? /^HTTP\/1\.1 200/ : /^HTTP\/1\.1 405/);
    }
  });
});

describe("slow and silent clients", () => {
  test("a head that comes byte by byte is ended with 408 when its time is over", async () => {
    const { port } = await aServer(onEnd, { limits: usual });
    const ended = await new Promise<string>((resolve) => {
      const socket = connect(port, "127.0.0.1");
      let answer = "";
      socket.write("GET / HTTP/1.1\r\n");
      const drip = setInterval(() => socket.write("X"), 20);
      socket.on("data", (data) => (answer += data.toString()));
      socket.on("error", () => undefined);
      socket.on("close", () => {
        clearInterval(drip);
        resolve(answer);
      });
    });
    expect(ended).toMatch(/^HTTP\/1\.1 408 /);
  });

  test("a client that connects and says nothing, or half a request, is let go", async () => {
    const { port } = await aServer(onEnd, { limits: usual });
    const both = await Promise.all(
      ["", "GET /weir HTTP/1.1\r\nHo"].map((bytes) => exchange(port, bytes, { halfOpen: true })),
    );
    for (const answer of both) expect(answer).toMatch(/^(HTTP\/1\.1 408 |$)/);
  });

  test("a client that asks and never reads is let go", async () => {
    const days = Array.from({ length: 200 }, (_, i) =>
      new Date(Date.UTC(2027, 2, 1 + i)).toISOString().slice(0, 10),
    );
    const { port } = await aServer(onEnd, {
      limits: { idleMs: 600, connections: 1 },
      files: { "weir.yaml": gardenText("Weir", ...days) },
    });
    const socket = connect(port, "127.0.0.1");
    onEnd(() => {
      socket.destroy();
    });
    socket.pause();
    const closed = new Promise((resolve) => socket.once("close", resolve));
    socket.on("error", () => undefined);
    // More answers than the buffers of both sides hold.
    const asked = 500;
    socket.write(`GET /weir.ics HTTP/1.1${crlf}Host: localhost${crlf}${crlf}`.repeat(asked));
    await until(() => hasRoom(port));
    let answers = 0;
    socket.on("data", (data: Buffer) => {
      answers += data.toString("latin1").match(/END:VCALENDAR/g)?.length ?? 0;
    });
    socket.resume();
    await closed;
    expect(answers).toBeLessThan(asked / 2);
    await stillServes(port);
  });

  test("a client that reads answers byte by byte is let go when their time is over", async () => {
    const days = Array.from({ length: 200 }, (_, i) =>
      new Date(Date.UTC(2027, 2, 1 + i)).toISOString().slice(0, 10),
    );
    const asked = 500;
    const { port } = await aServer(onEnd, {
      limits: { answerMs: 300, connections: 1, waiting: asked },
      files: { "weir.yaml": gardenText("Weir", ...days) },
    });
    const socket = connect(port, "127.0.0.1").on("error", () => undefined);
    onEnd(() => {
      socket.destroy();
    });
    // More answers than the buffers of both sides hold.
    socket.write(`GET /weir.ics HTTP/1.1${crlf}Host: localhost${crlf}${crlf}`.repeat(asked));
    await until(() => {
      socket.read(1);
      return hasRoom(port);
    });
  });

  test("requests sent without waiting for answers are answered, as many as may wait", async () => {
    const { port, lines } = await aServer(onEnd, { limits: { waiting: 16 } });
    const ask = `GET /nothing HTTP/1.1${crlf}Host: localhost${crlf}${crlf}`;
    const last = ask.replace(/\r\n$/, `Connection: close${crlf}${crlf}`);
    const answers = await exchange(port, ask.repeat(16) + last, { halfOpen: true });
    expect(answers.match(/^HTTP\/1\.1 404/gm)).toHaveLength(17);
    const before = lines.length;
    await exchange(port, ask.repeat(1000), { halfOpen: true });
    expect(lines.slice(before).length).toBeLessThanOrEqual(17);
    await stillServes(port);
  });

  test("more connections than the limit are turned away, and there is room again when others end", async () => {
    const { port } = await aServer(onEnd, {
      limits: { connections: 8 },
    });
    const sockets = Array.from({ length: 8 }, () => connect(port, "127.0.0.1"));
    onEnd(() => {
      for (const socket of sockets) socket.destroy();
    });
    for (const socket of sockets) socket.on("error", () => undefined);
    await Promise.all(
      sockets.map((socket) => new Promise((resolve) => socket.once("connect", resolve))),
    );
    const turnedAway = await exchange(port, `GET / HTTP/1.1${crlf}Host: localhost${crlf}${crlf}`, {
      halfOpen: true,
    });
    expect(turnedAway).toBe("");
    for (const socket of sockets) socket.destroy();
    await until(() => hasRoom(port));
  });
});

test("5,000 strings of bytes by chance do no harm, and nothing is left open", async () => {
  const { port, server } = await aServer(onEnd, { limits: usual });
  const chance = dice(20270301);
  const below = (n: number): number => Math.floor(chance() * n);
  const pieces = [
    ..."GET |HEAD |POST |/weir.ics|/weir|/| HTTP/1.1|HTTP/1.0|\r\n|\n|\r|Host: localhost|:|Connection: keep-alive".split(
      "|",
    ),
    ...'If-None-Match: "|*|W/|,|Content-Length: |Transfer-Encoding: chunked|Expect: 100-continue|\0|Upgrade: h2c|%2e%2e|9'.split(
      "|",
    ),
  ];
  const strings = Array.from({ length: 5_000 }, (_, i) => {
    // Half of them noise, half broken pieces of HTTP, which get further in.
    if (i % 2 === 0) return Buffer.from(Array.from({ length: 1 + below(300) }, () => below(256)));
    return Buffer.from(
      Array.from({ length: 1 + below(30) }, () => pieces[below(pieces.length)] ?? "").join(""),
    );
  });
  const statuses = new Map<string, number>();
  let next = 0;
  const worker = async (): Promise<void> => {
    for (let bytes = strings[next++]; bytes !== undefined; bytes = strings[next++]) {
      const answer = await exchange(port, bytes);
      const status = /^HTTP\/1\.1 (\d{3})/.exec(answer)?.[1] ?? "nothing";
      statuses.set(status, (statuses.get(status) ?? 0) + 1);
    }
  };
  await Promise.all(Array.from({ length: 40 }, worker));
  expect(
    [...statuses.keys()].every((s) =>
      ["200", "304", "400", "404", "405", "408", "417", "nothing"].includes(s),
    ),
    [...statuses].join(" "),
  ).toBe(true);
  expect(statuses.get("400")).toBeGreaterThan(1000);
  await stillServes(port);
  await server.stop();
});

test("memory stays flat over 3,000 requests of all kinds", async () => {
  const { port } = await aServer(onEnd);
  const ask = async (count: number): Promise<void> => {
    for (let i = 0; i < count; i++) {
      const path = ["/weir.ics", "/weir", "/", "/nothing"][i % 4] ?? "/";
      await get(
        port,
        path,
        i % 3 === 0 ? { "accept-encoding": "gzip" } : {},
        i % 7 === 0 ? "POST" : "GET",
      );
    }
  };
  const heapBytes = (): number => {
    globalThis.gc?.();
    return process.memoryUsage().heapUsed;
  };
  await ask(1000);
  const before = heapBytes();
  await ask(3000);
  // Without --expose-gc the heap holds garbage; a leak of a page a request would be far more.
  expect(heapBytes() - before).toBeLessThan(60_000_000);
});
