/** `serve --write` as it runs, in this process: its clock is the test's, and it can be away for a while. */
// @ts-nocheck

import { copyFileSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { run } from "../../src/cli/program.js";
import { aShell, examplePath, scratchFolder } from "../support/run-cli.js";

export interface GardenServer {
  readonly file: string;
  readonly text: () => string;
  /** Of the garden's page of marks. */
  readonly link: () => string;
  /** To a moment, `2027-06-23T12:00:00Z`. */
  readonly setClock: (now: string) => void;
  readonly stop: () => Promise<void>;
  /** Again, at the same address. */
  readonly start: () => Promise<void>;
}

/** Of a copy of an example. */
export async function aGardenServer(
  example: "back-garden" | "mid-season" | "shared-garden",
  now: string,
  more: readonly string[] = [],
): Promise<GardenServer> {
  const folder = scratchFolder();
  const file = join(folder, `${example}.yaml`);
  copyFileSync(examplePath(example), file);
  let clock = now;
  let port = "0";
  let link = "";
  let end: (() => Promise<void>) | undefined;

  const start = async (): Promise<void> => {
    const { shell, out, err } = aShell();
    const before = process.listeners("SIGTERM");
    const argv = ["serve", file, "--write", "--port", port, "--state", join(folder, "state")];
    const printed = new Promise<void>((resolve, reject) => {
      const done = run([...argv, ...more], {
        ...shell,
        now: () => clock,
        stdout: (text) => {
          out.push(text);
          resolve();
        },
      });
      done.then((code) => {
        if (code !== 0) reject(new Error(err.join("")));
      }, reject);
      end = async () => {
        // As if this process alone were told to end.
        const own = process.listeners("SIGTERM").find((one) => !before.includes(one));
        own?.("SIGTERM");
        await done;
      };
    });
    await printed;
    link = /To mark and write: (\S+)/.exec(out.join(""))?.[1] ?? "";
    port = new URL(link).port;
  };
  await start();
  return {
    file,
    text: () => readFileSync(file, "utf8"),
    link: () => link,
    setClock: (moment) => {
      clock = moment;
    },
    stop: async () => {
      await end?.();
      end = undefined;
    },
    start,
  };
}
