// @ts-nocheck
import { mkdir, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { describe, expect, onTestFinished, test } from "vitest";
import { announcement } from "../../src/serve/announcement.js";
import { day } from "../../src/dates.js";
import { aFolder, aServer, get, type Got } from "./a-server.js";
import { aWritableServer, encoded, hashOf, roundForm, testWriter, undoForm } from "./a-writer.js";

const onEnd = onTestFinished;
const id = "A".repeat(22);
const otherId = "B".repeat(22);

const locationOf = ({ headers }: Got): string => headers.location ?? "";

describe("a form", () => {
  test("is written into the file and answered by a page of the new state, with what became of it", async () => {
    const { send, page, text, port, base } = await aWritableServer(onEnd);
    const sent = await send(roundForm("2027-07-10", { id }));
    expect(sent.status).toBe(303);
    expect(locationOf(sent)).toBe(`weir?form=${id}`);
    expect(await text()).toContain("2027-07-10");
    const told = await page(`?form=${id}`);
    expect(told.days).toContain("2027-07-10");
    expect(told.outcome).toEqual({ kind: "written", told: "given 2027-07-10" });
    expect(told.lately).toEqual([{ form: id, told: "given 2027-07-10", canTakeBack: true }]);
    expect((await get(port, "/weir.ics")).body.toString()).toContain("20270710");
    expect((await page()).outcome).toBeUndefined();
    expect((await get(port, `${base}/`)).body.toString()).toContain(`<a href="weir">`);
  });

  test("that comes again is answered again and written once, also at the same moment and after a new start", async () => {
    let ticks = 0;
    const tick: typeof testWriter.tick = (...args) => {
      ticks++;
      return testWriter.tick(...args);
    };
    const writing = { writer: { ...testWriter, tick } };
    const { send, stateDir, server, file, text } = await aWritableServer(onEnd, { writing });
    const body = roundForm("2027-07-10", { id });
    const answers = await Promise.all([send(body), send(body), send(body)]);
    expect(answers.map(locationOf)).toEqual(Array(3).fill(`weir?form=${id}`));
    expect(ticks).toBe(1);
    await server.stop();
    const again = await aWritableServer(onEnd, { writing, stateDir, gardens: [file] });
    expect(locationOf(await again.send(body))).toBe(`weir?form=${id}`);
    expect(ticks).toBe(1);
    expect((await again.page(`?form=${id}`)).outcome).toMatchObject({ kind: "written" });
    expect((await text()).match(/2027-07-10/g)).toHaveLength(1);
  });

  test("that was refused is tried again: it may have been mended", async () => {
    const { send, page } = await aWritableServer(onEnd);
    await send(roundForm("2027-07-10", { id, seen: "old" }));
    const { outcome } = await page(`?form=${id}`);
    expect(outcome).toMatchObject({ kind: "conflict", wanted: "given 2027-07-10" });
    await send(roundForm("2027-07-10", { id }));
    expect((await page(`?form=${id}`)).outcome).toMatchObject({ kind: "written" });
  });

  test("with another button under the same id is refused in words, and the first stays", async () => {
    const { send, page, text } = await aWritableServer(onEnd);
    await send(roundForm("2027-07-10", { id }));
    const second = await send(roundForm("2027-07-11", { id }));
    expect(locationOf(second)).not.toContain(id);
    const { outcome } = await page(locationOf(second).replace("weir", ""));
    expect(JSON.stringify(outcome)).toContain("was sent before (given 2027-07-10)");
    expect((await page(`?form=${id}`)).outcome).toMatchObject({ kind: "written" });
    expect(await text()).not.toContain("2027-07-11");
  });

  test("that is none of ours in its fields is refused with a mend", async () => {
    const { send, page, text } = await aWritableServer(onEnd);
    const before = await text();
    for (const more of ["&day=2027-07-12", "&colour=blue", "&bed=%F0%9F%8D%85%0Ax"])
      await send(`${roundForm("2027-07-10", { id })}${more}`);
    expect((await page(`?form=${id}`)).outcome?.kind).toBe("refused");
    expect(await text()).toBe(before);
  });

  test("is written while the file has a problem, if the writer can; its page shows the last plan", async () => {
    const { send, page, file } = await aWritableServer(onEnd);
    await writeFile(file, "broken");
    expect((await send(roundForm("2027-07-10", { id }))).status).toBe(303);
    expect((await page(`?form=${id}`)).days).toEqual(["2027-06-12", "2027-06-26"]);
  });
});

describe("taking back", () => {
  test("is for the last ten written, each once", async () => {
    const { send, page, text } = await aWritableServer(onEnd);
    const ids = Array.from({ length: 11 }, (_, i) => String(i).padStart(22, "x"));
    for (const [i, each] of ids.entries()) await send(roundForm(`2027-07-${i + 10}`, { id: each }));
    const { lately } = await page();
    expect(lately.map(({ form }) => form)).toEqual(ids.slice(1).reverse());
    await send(undoForm(ids[0] ?? "", id));
    expect((await page(`?form=${id}`)).outcome?.kind).toBe("refused");
    await send(undoForm(ids[5] ?? "", otherId));
    const told = await page(`?form=${otherId}`);
    expect(told.outcome).toEqual({ kind: "written", told: "taken back 2027-07-15" });
    expect(told.days).not.toContain("2027-07-15");
    expect(told.lately.filter(({ canTakeBack }) => !canTakeBack)).toEqual([
      { form: ids[5], told: "given 2027-07-15", canTakeBack: false, isTakenBack: true },
    ]);
    // The same form again is answered again, another one finds nothing to take.
    await send(undoForm(ids[5] ?? "", otherId));
    expect((await page(`?form=${otherId}`)).outcome?.kind).toBe("written");
    await send(undoForm(ids[5] ?? "", "C".repeat(22)));
    expect((await page(`?form=${"C".repeat(22)}`)).outcome?.kind).toBe("refused");
    expect((await text()).match(/2027-07/g)).toHaveLength(10);
  });

  test("is refused where the lines changed since", async () => {
    const { send, page, file, text } = await aWritableServer(onEnd);
    await send(roundForm("2027-07-10", { id }));
    await writeFile(file, (await text()).replace("2027-07-10", "2027-07-20"));
    await send(undoForm(id, otherId));
    const told = await page(`?form=${otherId}`);
    expect(told.outcome).toEqual({ kind: "refused", told: ["it has changed"] });
    expect(told.lately[0]?.canTakeBack).toBe(true);
  });
});

test("the last 500 forms are known, in a file of the owner's alone; a damaged one is moved aside", async () => {
  const { send, page, stateDir, lines } = await aWritableServer(onEnd, {
    writing: {
      writer: { ...testWriter, tick: () => Promise.resolve({ kind: "already", told: "x" }) },
    },
  });
  const known = async (): Promise<string | undefined> =>
    (await readdir(stateDir)).find((name) => name.endsWith(".forms.json"));
  for (let i = 0; i < 3; i++) await send(roundForm("2027-07-10"));
  const path = join(stateDir, (await known()) ?? "");
  const kept = JSON.parse(await readFile(path, "utf8")) as { forms: { id: string }[] };
  const [one] = kept.forms;
  const forms = Array.from({ length: 500 }, (_, i) => ({
    ...one,
    id: String(i).padStart(22, "y"),
  }));
  await writeFile(path, JSON.stringify({ ...kept, forms }));
  await send(roundForm("2027-07-10", { id }));
  const after = JSON.parse(await readFile(path, "utf8")) as typeof kept;
  expect(after.forms).toHaveLength(500);
  expect(after.forms.at(-1)?.id).toBe(id);
  expect(after.forms[0]?.id).toBe("1".padStart(22, "y"));
  await writeFile(path, `{"forms":[`);
  expect((await page(`?form=${id}`)).outcome).toBeUndefined();
  expect(lines.join("\n")).toContain("was damaged; it is now");
  expect(await known()).toBeUndefined();
  await send(roundForm("2027-07-10", { id }));
  expect((await page(`?form=${id}`)).outcome?.kind).toBe("already");
});

test("a form whose outcome can't be kept is answered with its page at once", async () => {
  const { send, stateDir, lines } = await aWritableServer(onEnd, {
    writing: {
      writer: {
        ...testWriter,
        tick: async (...args) => {
          const name = (await readdir(stateDir)).find((one) => one.endsWith(".forms.json.lock"));
          // A folder in its place can't be written over, whoever runs the tests.
          await mkdir(join(stateDir, (name ?? "").slice(1, -".lock".length)));
          return testWriter.tick(...args);
        },
      },
    },
  });
  const { status, body } = await send(roundForm("2027-07-10", { id }));
  expect(status).toBe(200);
  expect(body.toString()).toContain("given 2027-07-10");
  expect(lines.join("\n")).toContain("forms.json");
});

describe("a whole file", () => {
  const saving = (text: string, opened: string): string =>
    encoded([
      ["text", text],
      ["opened", opened],
    ]);

  test("is read with its tag and saved over the text that was opened, and no other", async () => {
    const { port, base, send, text, page } = await aWritableServer(onEnd);
    const path = `${base}/weir/file.yaml`;
    const opened = await get(port, path);
    expect(opened.headers["content-type"]).toBe("application/yaml; charset=utf-8");
    expect(opened.body.toString()).toBe(await text());
    expect(opened.headers.etag).toBe(`"${hashOf(await text())}"`);
    const next = "W\u{1F345}+&=%25é Europe/Dublin 2027-08-01\r\n";
    const saved = await send(saving(next, hashOf(await text())), {}, path);
    expect(JSON.parse(saved.body.toString())).toEqual({ kind: "saved", hash: hashOf(next) });
    expect(await text()).toBe(next);
    expect((await page()).days[0]).toBe("2027-08-01");
    const stale = await send(saving("other", hashOf("before")), {}, path);
    expect(stale.status).toBe(409);
    expect(JSON.parse(stale.body.toString())).toEqual({
      kind: "conflict",
      text: next,
      hash: hashOf(next),
    });
    expect(await text()).toBe(next);
  });

  test("is neither binary nor larger than 1 MB", async () => {
    const { base, send, text } = await aWritableServer(onEnd);
    const [path, hash, before] = [`${base}/weir/file.yaml`, hashOf(await text()), await text()];
    expect((await send(saving("a\0b", hash), {}, path)).status).toBe(400);
    expect((await send(saving("a".repeat(1_000_001), hash), {}, path)).status).toBe(413);
    expect((await send(saving("é".repeat(3_000_000), hash), {}, path)).status).toBe(413);
    expect((await send(saving("a", "no hash"), {}, path)).status).toBe(400);
    expect((await send("text=a", {}, path)).status).toBe(400);
    expect(await text()).toBe(before);
    const large = `${before}#${"é".repeat(400_000)}`;
    expect((await send(saving(large, hash), {}, path)).status).toBe(200);
  });
});

describe("the link that writes", () => {
  test("stands in the terminal alone: in no page, index, calendar or line of the log", async () => {
    const { server, port, base, secret, lines, send, page } = await aWritableServer(onEnd);
    await send(roundForm("2027-07-10", { id }));
    await page();
    await get(port, `${base}/nothing`);
    await get(port, `${base}/weir/file.yaml`);
    await send("x", { origin: "null" });
    for (const path of ["/", "/weir", "/weir.ics", `${base}/`, `${base}/weir`])
      expect((await get(port, path)).body.toString(), path).not.toContain(secret);
    expect(lines.join("\n")).not.toContain(secret);
    expect(lines.some((line) => / POST ticks of weir 303 /.test(line))).toBe(true);
    const told = announcement(server, false);
    expect(told).toContain(`To mark and write: http://127.0.0.1:${port}${base}/weir\n`);
    expect(
      server
        .links()
        .map((link) => JSON.stringify(link))
        .join(),
    ).not.toContain(secret);
  });

  test("is needed on this computer too, where only its own names are answered", async () => {
    const { port, base, send, text } = await aWritableServer(onEnd);
    const before = await text();
    expect((await get(port, `${base}/weir`, { host: "evil.example" })).status).toBe(404);
    const evil = { host: "evil.example", origin: "http://evil.example" };
    expect((await send(roundForm("2027-07-10"), evil)).status).toBe(405);
    for (const path of ["/weir", "/", "/weir.ics", `/${"A".repeat(32)}/weir`])
      expect((await send(roundForm("2027-07-10"), {}, path)).status).toBe(405);
    expect(await text()).toBe(before);
  });

  test("ends when its file is deleted, also for a server that runs; the next start makes another", async () => {
    const { port, base, secret, send, stateDir, text, file, server } = await aWritableServer(onEnd);
    const before = await text();
    await rm(join(stateDir, "write-secret"));
    expect((await get(port, `${base}/weir`)).status).toBe(404);
    expect((await get(port, `${base}/weir/file.yaml`)).status).toBe(404);
    expect((await send(roundForm("2027-07-10"))).status).toBe(405);
    expect(await text()).toBe(before);
    expect((await get(port, "/weir")).status).toBe(200);
    await server.stop();
    const next = await aWritableServer(onEnd, { stateDir, gardens: [file] });
    expect(next.secret).not.toBe(secret);
    expect((await get(next.port, `${base}/weir`)).status).toBe(404);
  });

  test("is answered by nothing in a server that doesn't write", async () => {
    const { secret, stateDir, server } = await aWritableServer(onEnd);
    await server.stop();
    const { port } = await aServer(onEnd, { stateDir });
    for (const path of [`/${secret}/`, `/${secret}/weir`, `/${secret}/weir/file.yaml`])
      expect((await get(port, path)).status).toBe(404);
    expect((await get(port, `/${secret}/weir`, {}, "POST", "x")).status).toBe(405);
  });

  test("has no calendar below it, and writes nothing by GET or HEAD", async () => {
    const { port, base, text } = await aWritableServer(onEnd);
    const before = await text();
    expect((await get(port, `${base}/weir.ics`)).status).toBe(404);
    for (const method of ["GET", "HEAD"])
      for (const path of ["weir", "weir/file.yaml"])
        expect(
          (await get(port, `${base}/${path}?${roundForm("2027-07-10")}`, {}, method)).status,
        ).toBe(200);
    for (const method of ["PUT", "DELETE", "PATCH"])
      expect((await get(port, `${base}/weir`, {}, method)).status).toBe(405);
    expect(await text()).toBe(before);
  });
});

describe("pages that write", () => {
  test("let forms and scripts speak to this server alone, and are kept nowhere", async () => {
    const { port, base } = await aWritableServer(onEnd);
    for (const path of ["/", "/weir", `/weir?form=${id}`]) {
      const { headers } = await get(port, `${base}${path}`);
      const policy = headers["content-security-policy"];
      for (const part of ["form-action", "connect-src", "worker-src", "manifest-src"])
        expect(policy).toContain(`; ${part} 'self'`);
      expect(policy).toMatch(/^default-src 'none'; style-src 'sha256-[^']{44}'; script-src '/);
      expect(policy).not.toContain("unsafe");
      expect(headers["referrer-policy"]).toBe("same-origin");
      expect(headers["cache-control"]).toBe("no-store");
      expect(headers["set-cookie"]).toBeUndefined();
    }
    const worker = await get(port, `${base}/service-worker.js`);
    expect(worker.headers["content-type"]).toBe("text/javascript; charset=utf-8");
    expect(worker.headers["content-security-policy"]).toContain("connect-src 'self'");
    const manifest = await get(port, `${base}/manifest.webmanifest`);
    expect(manifest.headers["content-type"]).toBe("application/manifest+json");
  });

  test("on plain http from elsewhere say that they can't be kept for times without a network", async () => {
    const { page } = await aWritableServer(onEnd);
    expect((await page()).mayWorkOffline).toBe(true);
    const elsewhere = await aWritableServer(onEnd, { url: "http://garden.example" });
    const { body } = await get(elsewhere.port, `${elsewhere.base}/weir`, {
      host: "garden.example",
    });
    expect(body.toString()).toContain('"mayWorkOffline":false');
  });

  test("without web files there is no page for the file, and it says so", async () => {
    const { port, base, page } = await aWritableServer(onEnd);
    const { status, body } = await get(port, `${base}/weir/file`);
    expect(status).toBe(404);
    expect(body.toString()).toBe(
      "The page on which a garden file is written is not part of this installation.\n",
    );
    expect((await page()).filePage).toBeUndefined();
  });

  test("with web files: the page with a nonce of its own for each answer, files by a table", async () => {
    const webDir = await aFolder(onEnd);
    await writeFile(join(webDir, "file.html"), "<!doctype html><html><head><title>x</title>");
    await writeFile(join(webDir, "app.js"), "1;");
    await writeFile(join(webDir, "icon.png"), Buffer.from([0x89, 0xff, 0]));
    const { port, base, page, folder } = await aWritableServer(onEnd, { writing: { webDir } });
    expect((await page()).filePage).toBe("weir/file");
    const nonces = await Promise.all(
      [1, 2].map(async () => {
        const { headers, body } = await get(port, `${base}/weir/file`);
        const policy = headers["content-security-policy"]?.toString() ?? "";
        const nonce = /style-src 'self' 'nonce-([\w+/=]{24})'/.exec(policy)?.[1] ?? "";
        expect(policy).toContain("script-src 'self';");
        expect(body.toString()).toContain(
          `<head><base href="../-/"><meta name="csp-nonce" content="${nonce}"><meta name="garden-file" content="../weir/file.yaml"><title>`,
        );
        return nonce;
      }),
    );
    expect(nonces[0]).not.toBe(nonces[1]);
    const onDay = await aWritableServer(onEnd, { writing: { webDir }, today: day("2027-06-09") });
    const { body } = await get(onDay.port, `${onDay.base}/weir/file`);
    expect(body.toString()).toContain('<meta name="today" content="2027-06-09"><title>');
    const script = await get(port, `${base}/-/app.js`, { "accept-encoding": "gzip" });
    expect(script.headers["content-encoding"]).toBe("gzip");
    const tag = script.headers.etag ?? "";
    const again = { "accept-encoding": "gzip", "if-none-match": tag };
    expect((await get(port, `${base}/-/app.js`, again)).status).toBe(304);
    const icon = await get(port, `${base}/-/icon.png`);
    expect(icon.headers["content-type"]).toBe("image/png");
    expect([...icon.body]).toEqual([0x89, 0xff, 0]);
    // What comes later, or lies elsewhere, is not in the table.
    await writeFile(join(webDir, "later.js"), "2;");
    for (const name of ["later.js", "../weir.yaml", "..%2fweir.yaml", `${folder}/weir.yaml`, ""])
      expect((await get(port, `${base}/-/${name}`)).status).toBe(404);
  });
});
