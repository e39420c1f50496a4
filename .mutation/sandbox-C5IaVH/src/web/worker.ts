/** The worker: plans off the page's own thread, one question after the other. */
// @ts-nocheck

import { answerTo } from "./answer.js";
import type { Answer, Answered, Ask } from "./messages.js";

/** The little of a worker's global scope that is used; the types of a page say another. */
interface WorkerScope {
  onmessage: ((event: { readonly data: Ask }) => void) | null;
  postMessage(answer: Answer): void;
}

const scope = globalThis as unknown as WorkerScope;

let before: Promise<unknown> = Promise.resolve();
scope.onmessage = ({ data: ask }) => {
  before = before.then(async () => {
    const answered = await answerTo(ask).catch((error: unknown): Answered => ({
      kind: "failed",
      told: String(error),
    }));
    scope.postMessage({ turn: ask.turn, answered });
  });
};
