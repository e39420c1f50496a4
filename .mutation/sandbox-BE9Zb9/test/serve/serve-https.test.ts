// @ts-nocheck
import { copyFile, readFile, writeFile } from "node:fs/promises";
import { request } from "node:https";
import { join } from "node:path";
import { connect, type TLSSocket } from "node:tls";
import { fileURLToPath } from "node:url";
import { describe, expect, onTestFinished, test } from "vitest";
import { announcement } from "../../src/serve/announcement.js";
import { serveGardens } from "../../src/serve/serve.js";
import { aFolder, exchange, get, type Got, testSource, until } from "./a-server.js";
import { aWritableServer, roundForm } from "./a-writer.js";

const onEnd = onTestFinished;

/** Made for these tests alone, each with its own key; good for a hundred years. */
const certificates = fileURLToPath(new URL("certificates/", import.meta.url));

async function someFiles(of = "first", keyOf = of): Promise<{ cert: string; key: string }> {
  const folder = await aFolder(onEnd);
  const files = { cert: join(folder, "cert.pem"), key: join(folder, "key.pem") };
  await copyFile(join(certificates, `${of}.cert.pem`), files.cert);
  await copyFile(join(certificates, `${keyOf}.key.pem`), files.key);
  return files;
}

function ask(
  port: number,
  path: string,
  headers: Readonly<Record<string, string>> = {},
  body?: string,
): Promise<Got> {
  return new Promise((resolve, reject) => {
    const method = body === undefined ? "GET" : "POST";
    const options = { host: "127.0.0.1", port, path, headers, method, rejectUnauthorized: false };
    const sent = request({ ...options, agent: false }, (response) => {
      const parts: Buffer[] = [];
      response.on("data", (part: Buffer) => parts.push(part));
      response.on("end", () => {
        const { statusCode: status = 0, headers: got } = response;
        resolve({ status, headers: got, body: Buffer.concat(parts) });
      });
    });
    sent.on("error", reject);
    sent.end(body);
  });
}

const nameAt = (port: number): Promise<string> =>
  new Promise((resolve, reject) => {
    const socket: TLSSocket = connect(
      { host: "127.0.0.1", port, rejectUnauthorized: false },
      () => {
        resolve(String(socket.getPeerCertificate().subject.CN));
        socket.destroy();
      },
    );
    socket.on("error", reject);
  });

describe("a server with a certificate", () => {
  test("speaks https, says so in its links, and takes forms of its own pages alone", async () => {
    const server = await aWritableServer(onEnd, { certificate: await someFiles() });
    const { port, base, text } = server;
    const told = announcement(server.server, false);
    expect(told).toContain(`page      https://127.0.0.1:${port}/weir`);
    expect(told).toContain(`subscribe webcal://127.0.0.1:${port}/weir.ics`);
    expect(told).toContain(`To mark and write: https://127.0.0.1:${port}${base}/weir`);
    expect((await ask(port, "/weir.ics")).body.toString()).toContain("END:VCALENDAR");
    expect((await ask(port, `${base}/weir`)).body.toString()).toContain('"mayWorkOffline":true');
    const post = (scheme: string): Promise<Got> =>
      ask(
        port,
        `${base}/weir`,
        {
          origin: `${scheme}://127.0.0.1:${port}`,
          "content-type": "application/x-www-form-urlencoded",
        },
        roundForm("2027-07-10"),
      );
    expect((await post("http")).status).toBe(403);
    expect((await post("https")).status).toBe(303);
    expect(await text()).toContain("2027-07-10");
  });

  test("answers nothing without it, and has the same limits", async () => {
    const limits = { headersMs: 300, requestMs: 500, checkMs: 50, headerBytes: 4096 };
    const { port } = await aWritableServer(onEnd, { certificate: await someFiles(), limits });
    expect(await exchange(port, "GET /weir HTTP/1.1\r\nHost: localhost\r\n\r\n")).not.toMatch(
      /HTTP/,
    );
    // Bytes that never become a handshake.
    expect(await exchange(port, "\x16\x03\x01", { halfOpen: true })).not.toMatch(/HTTP/);
    const { status } = await ask(port, "/weir", { x: "a".repeat(5000) });
    expect(status).toBe(431);
    expect((await ask(port, "/weir")).status).toBe(200);
  });

  test("takes up a renewed one while it runs, and keeps the old one where the new is none", async () => {
    const certificate = await someFiles();
    const { port, lines } = await aWritableServer(onEnd, { certificate, renewMs: 20 });
    expect(await nameAt(port)).toBe("first.example");
    await writeFile(certificate.cert, "half a file");
    await until(() => lines.some((line) => line.includes("no certificate with its own key")));
    expect(await nameAt(port)).toBe("first.example");
    for (const part of ["cert", "key"] as const)
      await copyFile(join(certificates, `second.${part}.pem`), certificate[part]);
    await until(async () => (await nameAt(port)) === "second.example");
    expect(lines).toContain("the certificate was renewed");
    expect(lines.join("\n")).not.toContain("PRIVATE");
  });
});

test.each([
  ["that is not there", "cert", "ENOENT", "does not exist: check the path"],
  ["whose key is another's", "key", "second", "no certificate with its own key"],
  ["that is none", "cert", "text", "no certificate with its own key"],
] as const)("a certificate %s is told with a mend", async (_, part, what, told) => {
  const files = await someFiles("first", what === "second" ? "second" : "first");
  if (what === "ENOENT") files[part] += ".gone";
  if (what === "text") await writeFile(files[part], await readFile(new URL(import.meta.url)));
  const started = await serveGardens({
    gardens: [await aFolder(onEnd)],
    source: testSource,
    stateDir: await aFolder(onEnd),
    log: () => undefined,
    certificate: files,
  });
  expect(started.ok).toBe(false);
  if (started.ok) return;
  const [trouble] = started.problems;
  expect(`${trouble?.message ?? ""}: ${trouble?.mend ?? ""}`).toContain(told);
});

describe("behind a proxy", () => {
  const url = "https://garden.example.org/";

  test("links are the proxy's, always with the secret, and its address is what forms come from", async () => {
    const server = await aWritableServer(onEnd, { url });
    const { port, base, send, text, stateDir } = server;
    const secret = (await readFile(join(stateDir, "secret"), "utf8")).trim();
    const told = announcement(server.server, false);
    expect(told).toContain(`page      https://garden.example.org/${secret}/weir`);
    expect(told).toContain(`webcal://garden.example.org/${secret}/weir.ics`);
    expect(told).toContain(`To mark and write: https://garden.example.org${base}/weir`);
    expect(told).toContain(`The proxy in front is to ask http://127.0.0.1:${port}\n`);
    // Whichever Host a proxy sends on.
    for (const [i, host] of ["garden.example.org", `127.0.0.1:${port}`].entries()) {
      const form = roundForm(`2027-07-1${i}`);
      const origin = "https://garden.example.org";
      expect((await send(form, { host, origin })).status).toBe(303);
      expect(await text()).toContain(`2027-07-1${i}`);
      for (const strange of ["http://garden.example.org", `http://${host}`, "null"])
        expect((await send(roundForm("2027-07-20"), { host, origin: strange })).status).toBe(403);
    }
  });

  test("nobody on this computer needs less than the secret", async () => {
    const { port } = await aWritableServer(onEnd, { url });
    for (const path of ["/", "/weir", "/weir.ics"])
      expect((await get(port, path, { host: "localhost" })).status).toBe(404);
  });
});
