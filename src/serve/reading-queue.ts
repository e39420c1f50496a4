/** Which garden is read next: first those that somebody waits for, then the rest in their order. */
export interface ReadingQueue<T> {
  /** Before all that wait, behind others that were asked for. Fulfilled when it is read. */
  readonly first: (item: T) => Promise<void>;
  /** These wait from now on, in this order, instead of those that waited. */
  readonly wait: (items: readonly T[]) => void;
  /** Fulfilled when so many more have been read, or none waits or is under way. */
  readonly progress: (count: number) => Promise<void>;
  readonly isIdle: () => boolean;
  /** Begins none any more; fulfilled when those under way are read. */
  readonly stop: () => Promise<void>;
}

interface Asked {
  readonly promise: Promise<void>;
  readonly done: () => void;
}

/**
 * @param read never rejects
 * @param atOnce so many are under way at once; one more where one was asked for, so that it does not
 *   wait for what takes long
 */
export function readingQueue<T>(
  read: (item: T) => Promise<void>,
  atOnce: () => number,
): ReadingQueue<T> {
  const asked = new Map<T, Asked>();
  const waiting = new Set<T>();
  const underWay = new Map<T, Promise<void>>();
  let watchers: { left: number; readonly done: () => void }[] = [];
  let isStopped = false;

  const isIdle = (): boolean => asked.size + waiting.size + underWay.size === 0;

  const begin = (item: T): void => {
    const { done } = asked.get(item) ?? {};
    asked.delete(item);
    waiting.delete(item);
    const reading = read(item).then(() => {
      underWay.delete(item);
      done?.();
      for (const watcher of watchers) watcher.left--;
      next();
    });
    underWay.set(item, reading);
  };

  const next = (): void => {
    while (underWay.size <= atOnce()) {
      const mayWait = underWay.size < atOnce() && asked.size === 0;
      const [item] = mayWait ? waiting : asked.keys();
      if (item === undefined) break;
      begin(item);
    }
    const [over, left] = [watchers.filter(isOver), watchers.filter((one) => !isOver(one))];
    watchers = left;
    for (const { done } of over) done();
  };
  const isOver = ({ left }: { readonly left: number }): boolean => left <= 0 || isIdle();

  return {
    isIdle,
    first: (item) => {
      const known = underWay.get(item) ?? asked.get(item)?.promise;
      if (known !== undefined) return known;
      if (isStopped) return Promise.resolve();
      let done = (): void => undefined;
      const promise = new Promise<void>((resolve) => (done = resolve));
      asked.set(item, { promise, done });
      next();
      return promise;
    },
    wait: (items) => {
      waiting.clear();
      if (isStopped) return;
      for (const item of items) if (!underWay.has(item) && !asked.has(item)) waiting.add(item);
      next();
    },
    progress: (count) =>
      new Promise((done) => {
        watchers.push({ left: count, done });
        next();
      }),
    stop: async () => {
      isStopped = true;
      waiting.clear();
      for (const { done } of asked.values()) done();
      asked.clear();
      await Promise.all(underWay.values());
    },
  };
}
