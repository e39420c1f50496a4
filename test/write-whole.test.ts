import {
  chmodSync,
  chownSync,
  existsSync,
  linkSync,
  lstatSync,
  readdirSync,
  readFileSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { dirname, join } from "node:path";
import { describe, expect, test } from "vitest";
import { NotWritten, writeWhole } from "../src/write-whole.js";
import { scratchFile, scratchFolder } from "./support/run-cli.js";

const onUnix = process.platform !== "win32";
const isRoot = process.getuid?.() === 0;
/** Numbers of a user and a group that are nobody's. */
const [someone, group] = [40_001, 40_002];

/** By a user without the rights of root. */
async function as<T>(uid: number, gid: number, work: () => Promise<T>): Promise<T> {
  const groups = process.getgroups?.() ?? [];
  process.setgroups?.([gid]);
  process.setegid?.(gid);
  process.seteuid?.(uid);
  try {
    return await work();
  } finally {
    process.seteuid?.(0);
    process.setegid?.(0);
    process.setgroups?.(groups);
  }
}

async function refusedAs(code: string, path: string): Promise<NotWritten> {
  const error: unknown = await writeWhole(path, "new").catch((e: unknown) => e);
  if (!(error instanceof NotWritten)) throw new Error(`it was not refused: ${String(error)}`);
  expect(error.code).toBe(code);
  return error;
}

function only(path: string): void {
  expect(readdirSync(dirname(path))).toEqual(["garden.yaml"]);
}

describe.skipIf(!onUnix)("a file that is written anew", () => {
  test.each([0o600, 0o640, 0o664, 0o666, 0o2664])(
    "keeps its mode %o, whatever the mask",
    async (mode) => {
      const path = scratchFile("garden.yaml", "old");
      chmodSync(path, mode);
      await writeWhole(path, "new");
      expect(statSync(path).mode & 0o7777).toBe(mode);
      expect(readFileSync(path, "utf8")).toBe("new");
      only(path);
    },
  );

  test("may have a name as long as names can be", async () => {
    const name = `${"n".repeat(250)}.yaml`;
    const path = scratchFile(name, "old");
    await writeWhole(path, "new");
    expect(readdirSync(dirname(path))).toEqual([name]);
    expect(readFileSync(path, "utf8")).toBe("new");
  });

  test("is the one that links lead to", async () => {
    const path = scratchFile("garden.yaml", "old");
    const [near, far] = [join(scratchFolder(), "near"), join(scratchFolder(), "far")];
    symlinkSync(path, near);
    symlinkSync(near, far);
    await writeWhole(far, "new");
    expect([near, far].map((link) => lstatSync(link).isSymbolicLink())).toEqual([true, true]);
    expect(readFileSync(path, "utf8")).toBe("new");
  });

  test("is refused where a link leads nowhere, and the link stays", async () => {
    const link = join(scratchFolder(), "garden.yaml");
    const lost = join(scratchFolder(), "not-there.yaml");
    symlinkSync(lost, link);
    expect((await refusedAs("dangling", link)).message).toContain(`a link to ${lost}, and there`);
    expect(lstatSync(link).isSymbolicLink()).toBe(true);
    expect(existsSync(lost)).toBe(false);
  });

  test("is refused where it is write-protected, also for who may write everything", async () => {
    const path = scratchFile("garden.yaml", "old");
    chmodSync(path, 0o444);
    expect((await refusedAs("protected", path)).mend).toContain("chmod u+w");
    expect(readFileSync(path, "utf8")).toBe("old");
    only(path);
  });

  test("is refused where it has a second name, and both stay one file", async () => {
    const path = scratchFile("garden.yaml", "old");
    const other = join(scratchFolder(), "other.yaml");
    linkSync(path, other);
    expect((await refusedAs("linked", path)).what).toContain("hard link");
    expect(statSync(other).ino).toBe(statSync(path).ino);
    expect(readFileSync(other, "utf8")).toBe("old");
  });
});

describe.skipIf(!isRoot)("whose a file is", () => {
  const aFile = (uid: number, gid: number, mode: number): string => {
    const path = scratchFile("garden.yaml", "old");
    chownSync(path, uid, gid);
    chmodSync(path, mode);
    return path;
  };
  const rightsOf = (path: string): number[] => {
    const { uid, gid, mode } = statSync(path);
    return [uid, gid, mode & 0o7777];
  };

  test("stays so where root writes it", async () => {
    const path = aFile(someone, group, 0o640);
    await writeWhole(path, "new");
    expect(rightsOf(path)).toEqual([someone, group, 0o640]);
    expect(readFileSync(path, "utf8")).toBe("new");
  });

  test("changes where one of its group writes it, and its group and mode stay", async () => {
    const path = aFile(someone, group, 0o664);
    chmodSync(dirname(path), 0o777);
    await as(someone + 1, group, () => writeWhole(path, "new"));
    expect(rightsOf(path)).toEqual([someone + 1, group, 0o664]);
  });

  test("is not guessed: without its group it is refused", async () => {
    const path = aFile(someone, group, 0o666);
    chmodSync(dirname(path), 0o777);
    await as(someone + 1, group + 1, () => refusedAs("other-group", path));
    expect(rightsOf(path)).toEqual([someone, group, 0o666]);
    only(path);
  });

  test("decides who may write it", async () => {
    const path = aFile(someone, group, 0o644);
    chmodSync(dirname(path), 0o777);
    await as(someone + 1, group, () => refusedAs("protected", path));
    expect(readFileSync(path, "utf8")).toBe("old");
  });

  test("does not help where its folder may not be written in", async () => {
    const path = aFile(someone, group, 0o644);
    chmodSync(dirname(path), 0o755);
    const { what } = await as(someone, group, () => refusedAs("folder-protected", path));
    expect(what).toContain("its folder may not be written in");
    expect(readFileSync(path, "utf8")).toBe("old");
  });
});

test.skipIf(!onUnix)(
  "a file of ours replaces a link, and leaves a second name its text",
  async () => {
    const path = scratchFile("garden.yaml", "old");
    const [link, other] = [join(scratchFolder(), "link"), join(scratchFolder(), "other")];
    symlinkSync(path, link);
    linkSync(path, other);
    await writeWhole(link, "new", { isOurs: true });
    expect(lstatSync(link).isFile()).toBe(true);
    await writeWhole(path, "newer", { isOurs: true });
    const texts = [path, link, other].map((one) => readFileSync(one, "utf8"));
    expect(texts).toEqual(["newer", "new", "old"]);
  },
);

test("a new file has the mode asked for, less the mask", async () => {
  const path = join(scratchFolder(), "state.json");
  await writeWhole(path, "new", { mode: 0o600 });
  expect(statSync(path).mode & 0o777).toBe(onUnix ? 0o600 : 0o666);
});

test("what stands in the way leaves the file as it was, and nothing beside it", async () => {
  const path = scratchFile("garden.yaml", "old");
  const beforeReplacing = (): Promise<void> => {
    writeFileSync(path, "theirs");
    return Promise.reject(new Error("changed"));
  };
  await expect(writeWhole(path, "new", { beforeReplacing })).rejects.toThrow("changed");
  expect(readFileSync(path, "utf8")).toBe("theirs");
  only(path);
});
