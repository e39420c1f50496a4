/** A request -> the answer, by where its address leads. */
import type { IncomingMessage } from "node:http";
import { given } from "../values.js";
import type { GardenFolder } from "./garden-folder.js";
import { asksNow, pageOf, type ShowContext, titleOf, wasRead } from "./garden-show.js";
import type { Answer, Post } from "./http-server.js";
import { indexPage } from "./plain-page.js";
import { noCalendarYet, notFound, replyWith } from "./reply.js";
import { inflater, renewed, type Representation } from "./representation.js";
import { type Guard, routeOf } from "./route.js";
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
  readonly answer: (request: IncomingMessage) => Promise<Answer>;
  readonly post: Post;
} {
  const inflate = inflater(inflatedBytes);
  let index: Representation | undefined;
  const answer = async (request: IncomingMessage): Promise<Answer> => {
    const route = routeOf(request.url ?? "/", request.headers.host, guard);
    const now = context.now();
    const { nowMs } = now;
    if (route.to === "writing") {
      const isHeld = writing !== undefined && (await isStillGiven(guard, context));
      return isHeld ? writingAnswer(route.place, request, writing, inflate) : nothing;
    }
    if (route.to === "nowhere") return nothing;
    if (route.to === "index") {
      index = renewed(index, indexOf(folder, now), nowMs);
      return { reply: replyWith(index, request.headers, nowMs, inflate), what: "the index" };
    }
    const show = folder.named(route.garden);
    if (show === undefined) return nothing;
    const isCalendar = route.to === "calendar";
    const what = isCalendar ? `${show.name}.ics` : show.name;
    if (show.good === undefined && !wasRead(show)) await folder.firstRead(show);
    const shown = isCalendar ? show.good?.calendar : pageOf(show, context);
    const reply = shown ? replyWith(shown, request.headers, nowMs, inflate) : noCalendarYet;
    return { reply, what };
  };
  const post: Post = async (request) => {
    const route = routeOf(request.url ?? "/", request.headers.host, guard);
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
