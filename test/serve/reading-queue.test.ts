import { describe, expect, test } from "vitest";
import { readingQueue } from "../../src/serve/reading-queue.js";

/** A queue whose readings end when the test lets them, and the order in which they began. */
function aQueue(atOnce = 1) {
  const begun: string[] = [];
  const ends = new Map<string, () => void>();
  const queue = readingQueue<string>(
    (item) => {
      begun.push(item);
      return new Promise((resolve) => ends.set(item, resolve));
    },
    () => atOnce,
  );
  const end = async (item: string): Promise<void> => {
    ends.get(item)?.();
    await Promise.resolve();
    await Promise.resolve();
  };
  return { queue, begun, end };
}

describe("which garden is read next", () => {
  test("those that were asked for, in their order, before all that wait", async () => {
    const { queue, begun, end } = aQueue();
    queue.wait(["a", "b", "c", "d", "e"]);
    void queue.first("e");
    void queue.first("c");
    expect(begun).toEqual(["a", "e"]);
    for (const item of ["a", "e", "c", "b", "d"]) await end(item);
    expect(begun).toEqual(["a", "e", "c", "b", "d"]);
    expect(queue.isIdle()).toBe(true);
  });

  test("one that was asked for waits for none that takes long, and is read once", async () => {
    const { queue, begun, end } = aQueue();
    queue.wait(["slow", "b"]);
    const asked = [queue.first("b"), queue.first("b")];
    await end("b");
    await Promise.all(asked);
    expect(begun).toEqual(["slow", "b"]);
    await end("slow");
    expect(begun).toEqual(["slow", "b"]);
  });

  test("of a thousand that are asked for at once, only some are under way at a time", async () => {
    const { queue, begun, end } = aQueue(2);
    const items = Array.from({ length: 1_000 }, (_, i) => `garden ${i}`);
    queue.wait(items);
    const asked = [...items].reverse().map((item) => queue.first(item));
    expect(begun).toHaveLength(3);
    for (let i = 0; i < 1_000; i++) {
      expect(begun.length - i).toBeLessThanOrEqual(3);
      await end(begun[i] ?? "");
    }
    await Promise.all(asked);
    // The first two had begun before anybody asked.
    expect(begun).toEqual(["garden 0", "garden 1", ...items.slice(2).reverse()]);
  });

  test("a later list takes the place of what waits, so that an edit goes before first readings", async () => {
    const { queue, begun, end } = aQueue();
    queue.wait(["a", "b", "c"]);
    queue.wait(["edited", "b", "c"]);
    for (const item of ["a", "edited", "b", "c"]) await end(item);
    expect(begun).toEqual(["a", "edited", "b", "c"]);
  });

  test("tells when so many are read, or all", async () => {
    const { queue, end } = aQueue();
    queue.wait(["a", "b", "c"]);
    const told: string[] = [];
    void queue.progress(2).then(() => told.push("two"));
    void queue.progress(50).then(() => told.push("all"));
    await end("a");
    expect(told).toEqual([]);
    await end("b");
    await Promise.resolve();
    expect(told).toEqual(["two"]);
    await end("c");
    await Promise.resolve();
    expect(told).toEqual(["two", "all"]);
  });

  test("stopped, begins none any more, and lets nobody wait", async () => {
    const { queue, begun, end } = aQueue();
    queue.wait(["a", "b"]);
    void queue.first("c");
    const asked = queue.first("d");
    const stopped = queue.stop();
    await asked;
    await end("a");
    await end("c");
    await stopped;
    await queue.first("b");
    queue.wait(["b"]);
    expect(begun).toEqual(["a", "c"]);
  });
});
