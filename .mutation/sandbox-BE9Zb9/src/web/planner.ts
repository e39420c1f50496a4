/** The worker as the page sees it: of many texts the latest is planned. */
// @ts-nocheck

import type { Started } from "./checked-start.js";
import type { Answers } from "./starting-garden.js";
import type { Answer, Answered, Ask, Making, Writing } from "./messages.js";

/** A text that takes longer is given up once there is a newer one. */
const patienceMs = 2000;

interface InHand {
  readonly ask: Ask;
  readonly done: (answered: Answered) => void;
}

export interface Planner {
  /** The answer goes to `show` unless another text was asked of before it came. */
  readonly plan: (writing: Writing, withReasons: boolean) => void;
  readonly make: (writing: Writing, what: Making) => Promise<Answered>;
  /** The file that answers to five questions make. */
  readonly start: (answers: Answers, nowMs: number) => Promise<Started>;
}

export function planner(startWorker: () => Worker, show: (answered: Answered) => void): Planner {
  const inHand = new Map<number, InHand>();
  let turn = 0;
  let latest = 0;
  let planning: number | undefined;
  let waiting: (() => void) | undefined;
  let worker = started();

  function started(): Worker {
    const fresh = startWorker();
    fresh.onmessage = ({ data: { turn: of, answered } }: MessageEvent<Answer>) => {
      finish(of, answered);
    };
    fresh.onerror = ({ message }) => {
      for (const of of [...inHand.keys()]) finish(of, { kind: "failed", told: message });
    };
    return fresh;
  }

  function finish(of: number, answered: Answered): void {
    const one = inHand.get(of);
    inHand.delete(of);
    if (of === planning) planning = undefined;
    one?.done(answered);
    next();
  }

  function next(): void {
    if (planning !== undefined || waiting === undefined) return;
    const begin = waiting;
    waiting = undefined;
    begin();
  }

  function send(ask: Ask, done: InHand["done"]): void {
    inHand.set(ask.turn, { ask, done });
    worker.postMessage(ask);
  }

  /** What else was asked of the worker that is given up is asked again of the new one. */
  function giveUp(): void {
    if (planning !== undefined) inHand.delete(planning);
    planning = undefined;
    worker.terminate();
    worker = started();
    for (const { ask } of inHand.values()) worker.postMessage(ask);
    next();
  }

  return {
    plan: (writing, withReasons) => {
      const mine = ++turn;
      latest = mine;
      waiting = () => {
        planning = mine;
        send({ turn: mine, writing, wish: { kind: "plan", withReasons } }, (answered) => {
          if (mine === latest) show(answered);
        });
        setTimeout(() => {
          if (planning === mine && waiting !== undefined) giveUp();
        }, patienceMs);
      };
      next();
    },
    start: (answers, nowMs) =>
      new Promise((resolve, reject) => {
        const writing: Writing = { text: "", file: "", nowMs, named: {} };
        send({ turn: ++turn, writing, wish: { kind: "start", answers } }, (answered) => {
          if (answered.kind === "started") resolve(answered.started);
          else reject(new Error(answered.kind === "failed" ? answered.told : answered.kind));
        });
      }),
    make: (writing, what) =>
      new Promise((resolve) => {
        send({ turn: ++turn, writing, wish: { kind: "make", what } }, resolve);
      }),
  };
}
