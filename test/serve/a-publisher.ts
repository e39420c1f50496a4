/** A folder of gardens and one to publish them into. */
import { readdir, readFile, stat, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { onTestFinished } from "vitest";
import type { Result } from "../../src/problem.js";
import type { Published } from "../../src/serve/publish-folder.js";
import { publishGardens, type PublishOptions } from "../../src/serve/publish.js";
import type { Trouble } from "../../src/serve/system-trouble.js";
import { aFolder, testSource } from "./a-server.js";

export const nowMs = Date.UTC(2027, 4, 1, 12);

export interface Publisher {
  readonly gardens: string;
  readonly dir: string;
  readonly put: (name: string, text: string) => Promise<void>;
  readonly publish: (differs?: Partial<PublishOptions>) => Promise<Result<Published, Trouble>>;
  readonly published: (differs?: Partial<PublishOptions>) => Promise<Published>;
  readonly times: () => Promise<Readonly<Record<string, number>>>;
  /** All that lies in the folder, by name. */
  readonly texts: () => Promise<Readonly<Record<string, string>>>;
}

export async function aPublisher(files: Readonly<Record<string, string>>): Promise<Publisher> {
  const gardens = await aFolder(onTestFinished);
  const dir = join(await aFolder(onTestFinished), "public", "gardens");
  const put = (name: string, text: string) => writeFile(join(gardens, name), text);
  for (const [name, text] of Object.entries(files)) await put(name, text);
  const publish = (differs: Partial<PublishOptions> = {}) =>
    publishGardens({
      ...{ gardens: [gardens], dir, source: testSource, nowMs, making: "test" },
      ...differs,
    });
  const published = async (differs: Partial<PublishOptions> = {}): Promise<Published> => {
    const result = await publish(differs);
    if (!result.ok) throw new Error(result.problems.map(({ message }) => message).join());
    return result.value;
  };
  const times = async () => {
    const names = await readdir(dir);
    return Object.fromEntries(
      await Promise.all(
        names.map(async (name) => [name, (await stat(join(dir, name))).mtimeMs] as const),
      ),
    );
  };
  const texts = async () => Object.fromEntries(await textsIn(dir));
  return { gardens, dir, put, publish, published, times, texts };
}

async function textsIn(dir: string): Promise<[string, string][]> {
  const names = (await readdir(dir, { recursive: true })).sort();
  const files = await Promise.all(
    names.map(async (name): Promise<[string, string][]> => {
      const path = join(dir, name);
      return (await stat(path)).isFile() ? [[name, await readFile(path, "utf8")]] : [];
    }),
  );
  return files.flat();
}
