/** The clock, ISO 8601 UTC in whole seconds; the text is kept for its second: a server asks all the time. */
export function secondsClock(nowMs: () => number = Date.now): () => string {
  let last = { s: NaN, text: "" };
  return () => {
    const s = Math.floor(nowMs() / 1000);
    if (s !== last.s) last = { s, text: new Date(s * 1000).toISOString().replace(".000Z", "Z") };
    return last.text;
  };
}
