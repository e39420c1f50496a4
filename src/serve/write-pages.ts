/** What those who write are shown. */
import { randomBytes } from "node:crypto";
import { readFile } from "node:fs/promises";
import type { IncomingMessage } from "node:http";
import { basename } from "node:path";
import { decodeText } from "../garden/index.js";
import type { FormOutcome, TickView } from "../outputs/index.js";
import { given } from "../values.js";
import { asksNow, type GardenShow, settled, ticksOf, titleOf, wasRead } from "./garden-show.js";
import { hashOfText, type Outcome } from "./garden-writer.js";
import type { Answer } from "./http-server.js";
import { problemPage } from "./plain-page.js";
import { fileAway, noFilePage, notFound, type Reply, replyWith, unkept } from "./reply.js";
import type { Inflate } from "./representation.js";
import { namesLoopback, type WritePlace } from "./route.js";
import { lately, readForms, type SentForm } from "./sent-forms.js";
import { filePagePolicy, formPolicy, scriptPolicy } from "./security-headers.js";
import { todayIn } from "./today.js";
import type { WriteContext } from "./write-context.js";
import { newFormId } from "./written-once.js";

/** For GET and HEAD. */
export async function writingAnswer(
  route: WritePlace,
  request: IncomingMessage,
  context: WriteContext,
  inflate: Inflate,
): Promise<Answer> {
  const { folder, web, pages, now } = context;
  const { headers } = request;
  switch (route.to) {
    case "write index": {
      const page = indexOf(context);
      return { reply: unkept(200, "page", page, headers, formPolicy(page)), what: "all to tick" };
    }
    case "asset": {
      const file = web.files.get(route.name);
      if (file === undefined) return { reply: notFound, what: "-" };
      return { reply: replyWith(file, headers, now().nowMs, inflate), what: "a file of the pages" };
    }
    case "service worker": {
      const reply = unkept(200, "script", pages.serviceWorker, headers, scriptPolicy);
      return { reply, what: "the service worker" };
    }
    case "manifest":
      return { reply: unkept(200, "manifest", pages.webManifest, headers), what: "the manifest" };
    default: {
      const show = folder.named(route.garden);
      if (show === undefined) return { reply: notFound, what: "-" };
      const what = route.to === "tick page" ? `ticks of ${show.name}` : `file of ${show.name}`;
      if (route.to === "file") return { reply: await fileOf(show), what };
      if (route.to === "file page") return { reply: filePage(show, request, context), what };
      return { reply: await ticksPage(show, request, context), what };
    }
  }
}

/** The page as the file stands after the last form; `?form=<id>` says on top what became of that one. */
async function ticksPage(
  show: GardenShow,
  request: IncomingMessage,
  context: WriteContext,
): Promise<Reply> {
  const { stateDir, log, folder } = context;
  await settled(show);
  if (!wasRead(show)) await folder.firstRead(show);
  const { forms, notice } = await readForms(stateDir, show.file);
  if (notice !== undefined) log(`${show.name}: ${notice}`);
  const asked = new URLSearchParams(request.url?.split("?", 2)[1]).get("form");
  return tickPageOf(show, forms, forms.find(({ id }) => id === asked)?.outcome, request, context);
}

/** @param outcome of the form that this answers */
export function tickPageOf(
  show: GardenShow,
  forms: readonly SentForm[],
  outcome: Outcome | undefined,
  { headers }: IncomingMessage,
  { now, own, web, pages }: WriteContext,
): Reply {
  const problems = show.problems.map((one) => ({ ...one, file: basename(one.file) }));
  const filePage = web.page === undefined ? undefined : `${show.name}/file`;
  const ticks = ticksOf(show);
  if (ticks === undefined) {
    const page = problemPage(titleOf(show), problems, filePage);
    return unkept(200, "page", page, headers, formPolicy(page));
  }
  const isSafe = own.scheme === "https" || (own.publicOrigin?.startsWith("https:") ?? false);
  const view: TickView = {
    ...{ title: titleOf(show), address: show.name, timezone: ticks.timezone },
    today: todayIn(ticks.timezone, now()),
    lately: lately(forms),
    newFormId,
    mayWorkOffline: isSafe || namesLoopback(headers.host),
    problems,
    ...given({ filePage, outcome: outcome && told(outcome) }),
  };
  const page = pages.tickPage(ticks.sheet, view);
  return unkept(200, "page", page, headers, formPolicy(page));
}

/** Without the edits that take it back. */
function told(outcome: Outcome): FormOutcome {
  return outcome.kind === "written" ? { kind: "written", told: outcome.told } : outcome;
}

/** The page of the folder of web files, told where it is and which file it is for. */
function filePage(
  show: GardenShow,
  { headers }: IncomingMessage,
  { web, now }: WriteContext,
): Reply {
  if (web.page === undefined) return noFilePage;
  const nonce = randomBytes(16).toString("base64");
  const { today } = now();
  const day = today === undefined ? "" : `<meta name="today" content="${today}">`;
  const page = web.page.replace(
    /<head>/,
    (head) =>
      `${head}<base href="../-/"><meta name="csp-nonce" content="${nonce}"><meta name="garden-file" content="../${show.name}/file.yaml">${day}`,
  );
  return unkept(200, "page", page, headers, filePagePolicy(nonce));
}

/** Its text without a byte order mark; the tag is what a page must know to save it. */
async function fileOf(show: GardenShow): Promise<Reply> {
  const bytes = await readFile(show.file).catch(() => undefined);
  const text = bytes && decodeText(bytes, show.file);
  if (text?.ok !== true) return fileAway;
  const reply = unkept(200, "yaml", text.value, {});
  const tag = hashOfText(text.value);
  return { ...reply, headers: [...reply.headers, "ETag", `"${tag}"`] };
}

function indexOf({ folder, now, pages }: WriteContext): string {
  return pages.tickIndex(
    folder.shows().map((show) => ({
      title: titleOf(show),
      address: show.name,
      hasProblems: show.problems.length > 0,
      ...given({ asks: asksNow(show, now()) }),
    })),
  );
}
