/** A process may end at any moment: a lock that says nothing would keep all others waiting. */
import { existsSync } from "node:fs";
import type fs from "node:fs/promises";
import { dirname, join } from "node:path";
import { expect, test, vi } from "vitest";
import { withLocks } from "../src/lock.js";
import { scratchFile } from "./support/run-cli.js";

const watched = vi.hoisted(() => ({ lock: "", wasThere: [] as boolean[] }));

vi.mock("node:fs/promises", async (original) => {
  const real = await original<typeof fs>();
  const open: typeof real.open = async (...args) => {
    const handle = await real.open(...args);
    const write = handle.writeFile.bind(handle);
    handle.writeFile = async (...text) => {
      watched.wasThere.push(existsSync(watched.lock));
      await write(...text);
    };
    return handle;
  };
  return { ...real, open };
});

test("a lock is there only when it says whose it is", async () => {
  const file = scratchFile("plot.yaml", "garden: Plot\n");
  watched.lock = join(dirname(file), ".plot.yaml.lock");
  const done = await withLocks([file], () => Promise.resolve(existsSync(watched.lock)));
  expect(done).toEqual({ ok: true, value: true });
  expect(watched.wasThere).toEqual([false]);
});
