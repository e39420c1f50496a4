/** Lines that are written together, once the work at hand is done: a busy server writes often. */
export interface BatchedLines {
  readonly log: (line: string) => void;
  /** Writes what is still waiting; before the program ends. */
  readonly flush: () => void;
}

export function batchedLines(write: (text: string) => void): BatchedLines {
  let waiting: string[] = [];
  const flush = (): void => {
    if (waiting.length === 0) return;
    const text = `${waiting.join("\n")}\n`;
    waiting = [];
    write(text);
  };
  const log = (line: string): void => {
    if (waiting.push(line) === 1) setImmediate(flush);
  };
  return { log, flush };
}
