/** Keeps the writing page, so that it opens without a network; gardens never pass through it. */
// @ts-nocheck


declare const FILES: readonly string[];
declare const VERSION: string;

interface FetchEvent extends Event {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}
interface Waiting extends Event {
  waitUntil(done: Promise<unknown>): void;
}

const kept = `feedround ${VERSION}`;

addEventListener("install", (event) => {
  const done = caches.open(kept).then((cache) => cache.addAll(FILES));
  (event as Waiting).waitUntil(done);
});

/** Those of earlier versions go once no page uses them. */
addEventListener("activate", (event) => {
  const done = caches
    .keys()
    .then((names) =>
      Promise.all(
        names
          .filter((name) => name.startsWith("feedround ") && name !== kept)
          .map((name) => caches.delete(name)),
      ),
    );
  (event as Waiting).waitUntil(done);
});

addEventListener("fetch", (event) => {
  const asked = event as FetchEvent;
  if (asked.request.method !== "GET") return;
  const found = caches
    .open(kept)
    .then((cache) => cache.match(asked.request, { ignoreSearch: true }));
  asked.respondWith(found.then((answer) => answer ?? fetch(asked.request)));
});
