import { join } from "node:path";
import type { Waiting } from "../lock.js";
import type { Result } from "../problem.js";
import {
  clearTemporary,
  forgetParts,
  indexFiles,
  inFolder,
  ownedIn,
  type Published,
  putFiles,
  putWriting,
  removeGone,
  together,
} from "./publish-folder.js";
import { journalName, openJournal, partJournals } from "./publish-journal.js";
import {
  listName,
  manifestName,
  partsFolder,
  type PartList,
  readPartLists,
  writeManifest,
} from "./publish-manifest.js";
import type { PublishOptions } from "./publish.js";
import type { Trouble } from "./system-trouble.js";

export interface JoinOptions extends Pick<PublishOptions, "dir" | "index" | "writing"> {
  readonly waiting?: Partial<Waiting>;
}

/**
 * Makes one published folder of all its parts: index, writing page, and the list of files, as one run
 * over all gardens writes them. It reads the lists of the parts alone, no page and no garden. Trouble:
 * a part is missing or was cut off.
 */
export async function joinParts(options: JoinOptions): Promise<Result<Published, Trouble>> {
  const { dir, waiting } = options;
  return inFolder(dir, [manifestName], waiting, async () => {
    const lists = await wholeLists(dir);
    if (!lists.ok) return lists;
    const paths = lists.value.map(({ part }) => listName(part));
    return inFolder(dir, paths, waiting, () => joined(lists.value, options));
  });
}

async function wholeLists(dir: string): Promise<Result<PartList[], Trouble>> {
  const lists = await readPartLists(dir);
  if (!lists.ok) return lists;
  const [first] = lists.value;
  const refuse = (code: string, message: string, mend: string): Result<PartList[], Trouble> => ({
    ok: false,
    problems: [{ code, message: `${dir} ${message}`, mend }],
  });
  if (first === undefined)
    return refuse("no-parts", "holds no parts", "publish each with --part first, as --part 1/4");
  const { of } = first.part;
  if (lists.value.some(({ part }) => part.of !== of))
    return refuse(
      "unlike-parts",
      "holds parts of different counts",
      `delete the lists of the count that is not meant, in ${join(dir, partsFolder)}`,
    );
  const there = new Set(lists.value.map(({ part }) => part.number));
  const missing = Array.from({ length: of }, (_, i) => i + 1).filter((one) => !there.has(one));
  const [cutOff] = await partJournals(dir);
  const number = missing[0] ?? (cutOff && /(\d+)-of-\d+\.jsonl$/.exec(cutOff)?.[1]);
  if (number === undefined) return lists;
  const how = missing.length > 0 ? "lacks" : "holds only a piece of";
  const mend = `publish it with --part ${number}/${of}`;
  return refuse("part-missing", `${how} part ${number} of ${of}`, mend);
}

async function joined(
  lists: readonly PartList[],
  { dir, index, writing }: JoinOptions,
): Promise<Result<Published, Trouble>> {
  await clearTemporary(dir);
  const owned = await ownedIn(dir, undefined);
  if (!owned.ok) return owned;
  const path = join(dir, journalName(undefined));
  const journal = await openJournal(path, { making: "joined", day: "", isAsked: false }, 0);
  try {
    const entries = lists.flatMap((one) => one.index);
    const put = await putFiles(dir, indexFiles(index, entries), owned.value, journal.claim);
    const after = new Map([
      ...lists.flatMap(({ files }) => [...files]),
      ...Object.entries(put.hashes),
    ]);
    const gone = await removeGone(dir, owned.value, after);
    const beside = writing === undefined ? {} : await putWriting(dir, writing);
    await writeManifest(dir, after);
    await forgetParts(dir);
    await journal.end();
    return { ok: true, value: together([put, gone, beside]) };
  } finally {
    await journal.close();
  }
}
