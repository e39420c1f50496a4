// @ts-nocheck
import { execFileSync, spawnSync } from "node:child_process";
import { copyFileSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { cli, examplePath, scratchFolder } from "../support/run-cli.js";

const bin = fileURLToPath(new URL("../../dist/cli/main.js", import.meta.url));

/** An address of the documentation's (RFC 5737), which no computer has of itself. */
const address = "192.0.2.7";
const inNetworkOfItsOwn = [
  ...["-Urn", "sh", "-c"],
  `ip link set lo up && ip addr add ${address}/32 dev lo && exec "$@"`,
  "sh",
];
const mayHaveOne = spawnSync("unshare", [...inNetworkOfItsOwn, "true"]).status === 0;

/** A guard against a server that never says where it is. */
const mostMs = 120_000;

/** Starts the server, speaks to it from the same network, and tells what came back. */
const visitor = `
import { spawn } from "node:child_process";
const [bin, file, state, host] = process.argv.slice(1);
const server = spawn(process.execPath, [bin, "serve", file, "--write", "--host", host, "--state", state]);
const lines = { out: "", err: "" };
server.stderr.on("data", (chunk) => (lines.err += chunk));
await new Promise((resolve, reject) => {
  server.on("exit", () => reject(new Error(lines.err)));
  server.stdout.on("data", (chunk) => {
    lines.out += chunk;
    if (/To mark and write: \\S+\\n[^]*[\\u2580\\u2588]\\s*$/.test(lines.out)) resolve();
  });
});
const write = /To mark and write: (\\S+)/.exec(lines.out)[1];
const read = /page {6}(\\S+)/.exec(lines.out)[1];
const opened = await fetch(write + "/file.yaml");
const text = await opened.text();
const form = { text: text + "# by the page\\n", opened: opened.headers.get("etag").slice(1, -1) };
const post = async (link, origin) => {
  const headers = { origin, "content-type": "application/x-www-form-urlencoded" };
  return (await fetch(link, { method: "POST", headers, body: new URLSearchParams(form) })).status;
};
const own = new URL(write).origin;
const told = {
  reading: [await post(read, own), await post(read + "/file.yaml", own)],
  strangers: await post(write + "/file.yaml", "http://evil.example"),
  own: await post(write + "/file.yaml", own),
  page: await (await fetch(write)).text(),
  readPage: await (await fetch(read)).text(),
  bare: (await fetch(own + "/")).status,
  write, read, ...lines,
};
server.removeAllListeners("exit");
server.kill();
process.stdout.write(JSON.stringify(told));
`;

interface Told extends Record<"page" | "readPage" | "write" | "read" | "out" | "err", string> {
  readonly reading: readonly number[];
  readonly strangers: number;
  readonly own: number;
  readonly bare: number;
}

test.skipIf(!mayHaveOne)(
  "on an address that others reach: the link that reads can't write, the one that writes can",
  () => {
    const folder = scratchFolder();
    const file = join(folder, "plot.yaml");
    copyFileSync(examplePath("back-garden"), file);
    const argv = [process.execPath, "--input-type=module", "-e", visitor];
    const told = JSON.parse(
      execFileSync(
        "unshare",
        [...inNetworkOfItsOwn, ...argv, bin, file, join(folder, "state"), address],
        { encoding: "utf8", timeout: mostMs },
      ),
    ) as Told;
    expect(told.write).toMatch(new RegExp(`^http://${address}:\\d+/[\\w-]{32}/plot$`));
    expect(told.reading).toEqual([405, 405]);
    expect(told.strangers).toBe(403);
    expect(told.own).toBe(200);
    expect(told.bare).toBe(404);
    expect(readFileSync(file, "utf8").match(/# by the page/g)).toHaveLength(1);
    const [, secret = "-"] = /\/([\w-]{32})\//.exec(told.write) ?? [];
    const [, readSecret = "-"] = /\/([\w-]{32})\//.exec(told.read) ?? [];
    expect(secret).not.toBe(readSecret);
    for (const text of [told.page, told.readPage, told.err, readFileSync(file, "utf8")])
      expect(text).not.toContain(secret);
    // Two codes: of the page, and of the link that writes.
    expect(told.out.match(/^\u2588{29,}$/gm)?.length).toBeGreaterThanOrEqual(4);
  },
);

test("a certificate without its key is wrong usage, and one that can't be read is told with a mend", async () => {
  const garden = examplePath("back-garden");
  const alone = await cli(["serve", garden, "--cert", "chain.pem"]);
  expect(alone.code).toBe(2);
  expect(alone.stderr).toContain("--cert and --key go together");
  const files = ["--cert", "gone.pem", "--key", "gone.pem"];
  const gone = await cli(["serve", garden, "--state", scratchFolder(), ...files]);
  expect(gone.code).toBe(3);
  expect(gone.stderr).toContain("gone.pem does not exist");
});
