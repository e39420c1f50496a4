import { mkdir, rm } from "node:fs/promises";
import { join, resolve } from "node:path";
import { type Waiting, withLocks } from "../lock.js";
import type { Problem, Result } from "../problem.js";
import { given } from "../values.js";
import { askedDays, nextAsks, noRound, pageWritten } from "../words/index.js";
import { writeWhole } from "../write-whole.js";
import { gardenNames, type NamedFile } from "./garden-names.js";
import type { GardenSource } from "./garden-source.js";
import { writeOwn } from "./own-calendar.js";
import { subscribeLinks, type SubscribeLinks } from "./links.js";
import { type IndexEntry, indexPage } from "./plain-page.js";
import {
  type Manifest,
  manifestName,
  readManifest,
  textOf,
  writeManifest,
} from "./publish-manifest.js";
import { qrSvg } from "./qr.js";
import { contentHash } from "./representation.js";
import { scan } from "./scan.js";
import { withPolicy } from "./security-headers.js";
import { type Now, todayIn } from "./today.js";
import { refuseChanged, type Trouble, troubleOf } from "./system-trouble.js";

export interface PublishOptions extends Partial<Now> {
  /** Garden files, and folders of them. */
  readonly gardens: readonly string[];
  /** Where to write; made when it is not there. */
  readonly dir: string;
  readonly source: GardenSource;
  /** Whether to write an `index.html` with a link to each garden. */
  readonly index?: boolean;
  /** Files of the writing page, to be put into a folder of its own there. */
  readonly writing?: ReadonlyMap<string, string>;
  /** Address at which `dir` will be found, for links and codes on the pages. */
  readonly url?: string;
  readonly waiting?: Partial<Waiting>;
  /** After each garden, for progress. */
  readonly onGarden?: (done: number, all: number) => void;
}

export interface Published {
  /** File names in the folder. */
  readonly written: readonly string[];
  readonly unchanged: readonly string[];
  readonly removed: readonly string[];
  /** Of gardens that have some; what was published of them before stays. */
  readonly problems: readonly Problem[];
  readonly notices: readonly string[];
}

/**
 * Writes calendar and page of each garden as files for any web host. A file whose content is the same
 * keeps its bytes and times; files of gardens that are gone are removed if we wrote them and nobody
 * changed them. Trouble: a path can't be read or written, or a file of that name is not ours.
 */
export async function publishGardens(options: PublishOptions): Promise<Result<Published, Trouble>> {
  const { dir } = options;
  const found = await scan(options.gardens.map((path) => resolve(path)));
  if (found.troubles.length > 0) {
    return { ok: false, problems: found.troubles.map(({ trouble }) => trouble) };
  }
  try {
    await mkdir(dir, { recursive: true });
    const files = [...found.prints.keys()];
    const publish = async (): Promise<Result<Published, Trouble>> => {
      const before = await readManifest(dir);
      if (!before.ok) return before;
      const put = await putFiles(dir, await makeFiles(gardenNames(files), options), before.value);
      return put.ok && options.writing ? withWriting(put.value, dir, options.writing) : put;
    };
    const done = await withLocks([...files, join(dir, manifestName)], publish, options.waiting);
    return done.ok ? done.value : done;
  } catch (error) {
    return { ok: false, problems: [troubleOf(error, dir)] };
  }
}

/** Beside the gardens, with a list of files of its own. */
async function withWriting(
  gardens: Published,
  dir: string,
  files: ReadonlyMap<string, string>,
): Promise<Result<Published, Trouble>> {
  const folder = join(dir, writingFolder);
  await mkdir(folder, { recursive: true });
  const before = await readManifest(folder);
  if (!before.ok) return before;
  const made = { files, previous: new Map(), kept: [], problems: [], notices: [] };
  const put = await putFiles(folder, made, before.value);
  if (!put.ok) return put;
  const named = (names: readonly string[]): string[] =>
    names.map((name) => `${writingFolder}/${name}`);
  return {
    ok: true,
    value: {
      ...gardens,
      written: [...gardens.written, ...named(put.value.written)],
      unchanged: [...gardens.unchanged, ...named(put.value.unchanged)],
      removed: [...gardens.removed, ...named(put.value.removed)],
      notices: [...gardens.notices, ...put.value.notices],
    },
  };
}

const writingFolder = "writing";

interface Made extends Pick<Published, "problems" | "notices"> {
  readonly files: ReadonlyMap<string, string>;
  /** What calendars were made over. */
  readonly previous: ReadonlyMap<string, string | undefined>;
  /** Files of gardens with problems: neither written nor removed. */
  readonly kept: readonly string[];
}

async function makeFiles(gardens: readonly NamedFile[], options: PublishOptions): Promise<Made> {
  const { dir, source, url, onGarden } = options;
  const now = { nowMs: options.nowMs ?? Date.now(), ...given({ today: options.today }) };
  const files = new Map<string, string>();
  const before = new Map<string, string | undefined>();
  const kept: string[] = [];
  const problems: Problem[] = [];
  const notices: string[] = [];
  const entries: IndexEntry[] = [];
  for (const [done, { file, name }] of gardens.entries()) {
    const [calendarName, pageName] = [`${name}.ics`, `${name}.html`];
    const previous = await textOf(join(dir, calendarName));
    before.set(calendarName, previous);
    const loaded = await source.load(file, {
      ...now,
      ...(previous === undefined ? {} : { previous, previousFile: join(dir, calendarName) }),
    });
    const entry = { page: pageName, calendar: calendarName, hasProblems: !loaded.ok };
    if (loaded.ok) {
      const { plan, calendar, ownCalendar } = loaded;
      const today = todayIn(plan.garden.timezone, now);
      files.set(calendarName, calendar);
      const view = { today, problems: [], subscribe: linksOf(name, url) };
      files.set(pageName, withPolicy(source.page(plan, view)));
      const lines = [...loaded.notices, ...(await writeOwn(ownCalendar, calendar))];
      notices.push(...lines.map((line) => `${name}: ${line}`));
      const { amounts } = plan.garden;
      const [next] = askedDays(plan, today);
      const asks = next === undefined ? noRound(plan) : nextAsks(next, amounts, today);
      entries.push({
        ...entry,
        title: plan.garden.name,
        asks: `${asks}. ${pageWritten(today, amounts)}.`,
      });
    } else {
      problems.push(...loaded.problems);
      kept.push(calendarName, pageName);
      if (previous !== undefined) entries.push({ ...entry, title: name });
    }
    onGarden?.(done + 1, gardens.length);
  }
  if (options.index) files.set("index.html", withPolicy(indexPage(entries)));
  return { files, previous: before, kept, problems, notices };
}

/** Beside the page where the address is not known: a relative link works on any host. */
function linksOf(name: string, url: string | undefined): SubscribeLinks {
  if (url === undefined) {
    const calendar = `${name}.ics`;
    return { webcal: calendar, http: calendar, page: `${name}.html` };
  }
  const links = subscribeLinks(url.replace(/\/+$/, ""), name, ".html");
  return { ...links, qrSvg: qrSvg(links.page, "QR code of this page") };
}

async function putFiles(
  dir: string,
  { files, previous, kept, problems, notices: told }: Made,
  before: Manifest,
): Promise<Result<Published, Trouble>> {
  const notices = [...told];
  const present = new Map<string, string>();
  for (const name of new Set([...files.keys(), ...before.keys()])) {
    const text = await textOf(join(dir, name));
    if (text !== undefined) present.set(name, text);
  }
  const strange = [...files].filter(
    ([name, content]) => present.has(name) && !before.has(name) && present.get(name) !== content,
  );
  if (strange.length > 0) {
    const mend = "move it away, or publish into another folder";
    const problems = strange.map(([name]) => {
      const message = `${join(dir, name)} is there already and ${manifestName} does not list it`;
      return { code: "not-ours", message, mend };
    });
    return { ok: false, problems };
  }

  const after = new Map([...files].map(([name, content]) => [name, contentHash(content)]));
  // First what will be ours, so that a run cut off half-way can be done again.
  await writeManifest(dir, new Map([...before, ...after]));
  const written: string[] = [];
  const unchanged: string[] = [];
  for (const [name, content] of files) {
    if (present.get(name) === content) unchanged.push(name);
    else {
      const path = join(dir, name);
      await writeWhole(path, content, {
        isOurs: true,
        beforeReplacing: async () => {
          if (previous.has(name)) refuseChanged(previous.get(name), await textOf(path));
        },
      });
      written.push(name);
    }
  }
  const removed: string[] = [];
  for (const [name, hash] of before) {
    if (after.has(name)) continue;
    if (kept.includes(name)) after.set(name, hash);
    else if (contentHash(present.get(name) ?? "") === hash) {
      await rm(join(dir, name));
      removed.push(name);
    } else if (present.has(name)) notices.push(`${name} stays: someone has changed it`);
  }
  await writeManifest(dir, after);
  return { ok: true, value: { written, unchanged, removed, problems, notices } };
}
