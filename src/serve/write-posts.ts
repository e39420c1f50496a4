/** What a POST below the secret of those who write does: a form of the tick page, or a whole file. */
import type { IncomingMessage } from "node:http";
import { largestGardenBytes } from "../garden/index.js";
import type { Fields } from "../ticks/index.js";
import { networkOf } from "./connections.js";
import { fieldsIn, only, readBody } from "./form-body.js";
import type { GardenShow } from "./garden-show.js";
import type { Answer } from "./http-server.js";
import { refusalOfPost } from "./post-rules.js";
import {
  noForm,
  notFound,
  notNow,
  type Reply,
  seeOther,
  tooLarge,
  tooOften,
  unkept,
} from "./reply.js";
import type { WritePlace } from "./route.js";
import { readForms } from "./sent-forms.js";
import { troubleLine } from "./system-trouble.js";
import type { WriteContext } from "./write-context.js";
import { tickPageOf } from "./write-pages.js";
import { formIdIn, sendForm } from "./written-once.js";

/** Our choice. A form of forty beds with two entries each has some 15 kB. */
const mostFormBytes = 64_000;
/** A byte of a garden file may come as three letters. */
const mostSavingBytes = 3 * largestGardenBytes + 1000;

/** Undefined where no POST is taken. */
export async function writingPost(
  route: WritePlace,
  request: IncomingMessage,
  context: WriteContext,
): Promise<Answer | "gone" | undefined> {
  if (route.to !== "tick page" && route.to !== "file") return undefined;
  const show = context.folder.named(route.garden);
  if (show === undefined) return { reply: notFound, what: "-" };
  const isForm = route.to === "tick page";
  const what = isForm ? `ticks of ${show.name}` : `file of ${show.name}`;
  const waitS = context.rate.waitS(
    networkOf(request.socket.remoteAddress ?? ""),
    context.now().nowMs,
  );
  if (waitS > 0) return { reply: tooOften(waitS), what };
  const refusal = refusalOfPost(request, context.own);
  if (refusal !== undefined) return { reply: refusal, what };
  const body = await readBody(request, isForm ? mostFormBytes : mostSavingBytes);
  if (body.kind === "gone") return "gone";
  if (body.kind === "too-large") return { reply: tooLarge, what };
  const fields = fieldsIn(body.bytes);
  if (fields === undefined) return { reply: noForm, what };
  const take = isForm ? takeForm : saveFile;
  return { reply: await take(show, fields, request, context), what };
}

async function takeForm(
  show: GardenShow,
  fields: Fields,
  request: IncomingMessage,
  context: WriteContext,
): Promise<Reply> {
  const { folder, stateDir, log } = context;
  const id = formIdIn(fields);
  if (id === undefined) return noForm;
  const sent = await sendForm(show, id, fields, context);
  if (!sent.ok) {
    for (const trouble of sent.problems) log(`${show.name}: ${troubleLine(trouble)}`);
    return notNow;
  }
  const { outcome, isKept, lines } = sent.value;
  for (const line of lines) log(`${show.name}: ${line}`);
  if (outcome.kind === "written") folder.reread(show);
  if (isKept) return seeOther(`${show.name}?form=${sent.value.id}`);
  // What can't be looked up later is said now.
  const { forms } = await readForms(stateDir, show.file);
  return tickPageOf(show, forms, outcome, request, context);
}

async function saveFile(
  show: GardenShow,
  fields: Fields,
  { headers }: IncomingMessage,
  { folder, writer }: WriteContext,
): Promise<Reply> {
  const [text, openedHash] = [only(fields, "text"), only(fields, "opened")];
  if (text === undefined || openedHash === undefined) return noForm;
  if (!/^[0-9a-f]{64}$/.test(openedHash) || text.includes("\0")) return noForm;
  if (Buffer.byteLength(text) > largestGardenBytes) return tooLarge;
  const saved = await writer.save(show.file, { text, openedHash });
  if (saved.kind === "saved") folder.reread(show);
  const status = { saved: 200, conflict: 409, refused: 422 } as const;
  return unkept(status[saved.kind], "json", JSON.stringify(saved), headers);
}
