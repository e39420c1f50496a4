/** A request -> the answer, by where its address leads. */
import type { IncomingMessage } from "node:http";
import { given } from "../values.js";
import type { GardenFolder } from "./garden-folder.js";
import {
  asksNow,
  type GardenShow,
  pageOf,
  type ShowContext,
  titleOf,
  wasRead,
} from "./garden-show.js";
import type { Answer, Get, Post } from "./http-server.js";
import { indexPage } from "./plain-page.js";
import { noCalendarYet, notFound, replyWith } from "./reply.js";
import { inflater, renewed, type Representation } from "./representation.js";
import type { Asked } from "./request-fields.js";
import { type Guard, router, type WritePlace } from "./route.js";
import { stillHolds } from "./secret.js";
import type { Now } from "./today.js";
import type { WriteContext } from "./write-context.js";
import { writingAnswer } from "./write-pages.js";
import { writingPost } from "./write-posts.js";

export interface Answering {
  readonly folder: GardenFolder;
  readonly context: ShowContext;
  readonly guard: Guard;
  /** Where gardens can be written into; then the guard has a secret for it. */
  readonly writing: WriteContext | undefined;
}

/** Uncompressed bytes at hand for clients without gzip. */
const inflatedBytes = 16_000_000;

export function answering({ folder, context, guard, writing }: Answering): {
  readonly answer: Get;
  readonly post: Post;
} {
  const inflate = inflater(inflatedBytes);
  const leads = router(guard);
  let index: Representation | undefined;
  // A day that was asked for stays.
  const { today } = context.now();
  const gardenAnswer = (show: GardenShow, isCalendar: boolean, asked: Asked, now: Now): Answer => {
    const what = isCalendar ? `${show.name}.ics` : show.name;
    const shown = isCalendar ? show.good?.calendar : pageOf(show, context, now);
    return { reply: shown ? replyWith(shown, asked, now.nowMs, inflate) : noCalendarYet, what };
  };
  // What is at hand is answered at once: a promise for each would cost a fifth of the answers under load.
  const answer: Get = (request, nowMs) => {
    const { url = "/", headers } = request;
    const route = leads(url, headers.host);
    if (route.to === "writing") return writing ? written(route.place, request, writing) : nothing;
    if (route.to === "nowhere") return nothing;
    const now: Now = today === undefined ? { nowMs } : { nowMs, today };
    if (route.to === "index") {
      index = renewed(index, indexOf(folder, now), nowMs);
      return { reply: replyWith(index, headers, nowMs, inflate), what: "the index" };
    }
    const show = folder.named(route.garden);
    if (show === undefined) return nothing;
    const isCalendar = route.to === "calendar";
    if (show.good !== undefined || wasRead(show))
      return gardenAnswer(show, isCalendar, headers, now);
    return folder
      .firstRead(show)
      .then(() => gardenAnswer(show, isCalendar, headers, context.now()));
  };
  const written = async (
    place: WritePlace,
    request: IncomingMessage,
    context: WriteContext,
  ): Promise<Answer> =>
    (await isStillGiven(guard, context))
      ? writingAnswer(place, request, context, inflate)
      : nothing;
  const post: Post = async (request) => {
    const route = leads(request.url ?? "/", request.headers.host);
    if (route.to !== "writing" || writing === undefined) return undefined;
    return (await isStillGiven(guard, context))
      ? writingPost(route.place, request, writing)
      : undefined;
  };
  return { answer, post };
}

const nothing: Answer = { reply: notFound, what: "-" };

/** Who deletes the file of the secret takes the link back at once, from a server that runs, too. */
function isStillGiven({ writeSecret = "" }: Guard, { stateDir }: ShowContext): Promise<boolean> {
  return stillHolds(stateDir, "write-secret", writeSecret);
}

function indexOf(folder: GardenFolder, now: Now): string {
  return indexPage(
    folder.shows().map((show) => ({
      title: titleOf(show),
      page: show.name,
      calendar: `${show.name}.ics`,
      hasProblems: show.problems.length > 0,
      ...given({ asks: asksNow(show, now) }),
    })),
  );
}
