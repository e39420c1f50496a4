import type { Day } from "../dates.js";
import { joinParts, type Part, publishGardens, type PublishOptions } from "../serve/index.js";
import { given } from "../values.js";
import { sourceOf, threadsFor } from "./garden-reading.js";
import { ioTrouble, reportProblems } from "./report.js";
import { exitCodes, type Shell, wrongUsage } from "./shell.js";
import { version } from "./version.js";
import { writingPage } from "./writing-page.js";

interface PublishWishes {
  readonly index?: true;
  readonly writing?: true;
  readonly url?: string;
  readonly part?: Part;
  readonly join?: true;
  readonly extraRounds?: number;
  readonly today?: Day;
}

export async function publishCommand(
  dir: string,
  gardens: readonly string[],
  wishes: PublishWishes,
  shell: Shell,
): Promise<number> {
  const { index, join, part } = wishes;
  refuseOdd(gardens, wishes);
  const writing = wishes.writing && (await writingPage());
  const folder = { dir, waiting: { pause: shell.pause }, ...given({ index, writing }) };
  const published = join
    ? await joinParts(folder)
    : await publishGardens({ ...folder, ...runOf(gardens, wishes, shell) });
  if (shell.progress) shell.stderr("\r\u001b[K");
  if (!published.ok) throw ioTrouble(published.problems);
  const { written, unchanged, removed, problems, notices, troubles } = published.value;
  for (const notice of notices) shell.stderr(`${notice}\n`);
  const what = part === undefined ? dir : `${dir}, part ${part.number} of ${part.of}`;
  shell.stderr(
    `${what}: ${written.length} written, ${unchanged.length} unchanged, ${removed.length} removed\n`,
  );
  const code = problems.length > 0 ? reportProblems(problems, {}, shell) : exitCodes.fine;
  if (troubles.length > 0) throw ioTrouble(troubles);
  return code;
}

function runOf(
  gardens: readonly string[],
  { extraRounds, today, url, part }: PublishWishes,
  shell: Shell,
): Omit<PublishOptions, "dir"> {
  const wishes = given({ extraRounds });
  return {
    gardens,
    source: sourceOf(wishes),
    making: JSON.stringify({ version: version(), ...wishes }),
    nowMs: Date.parse(shell.now()),
    // On a terminal, one line counts up while a folder of gardens is worked on.
    onGarden: (done, all) => {
      if (all > 1 && shell.progress) shell.stderr(`\r${done} of ${all} gardens`);
    },
    ...given({ today, url, part, threads: threadsFor(wishes, shell) }),
  };
}

function refuseOdd(
  gardens: readonly string[],
  { join, part, index, writing }: PublishWishes,
): void {
  if (join && part) throw wrongUsage("--join comes after the parts: give it without --part");
  if (join && gardens.length > 0)
    throw wrongUsage("--join takes the lists of the parts alone: give no gardens with it");
  if (!join && gardens.length === 0) throw wrongUsage("name the gardens to publish");
  if (part && (index ?? writing))
    throw wrongUsage("--index and --writing are of the whole folder: give them with --join");
}
