/**
 * Sends what waits, the oldest first; a mark is forgotten only when the server has said what became of
 * it. A mark that is answered at once brings the new page with it; of others it is told until closed.
 */
// @ts-nocheck

export const sendScript = `
  const sending = new Set();
  let [isBusy, isAskedAgain, isReached, waitMs, timer] = [false, false, true, 0, undefined];
  const parsed = (text) => new DOMParser().parseFromString(text, "text/html");
  const asked = async (address, options) => {
    const stop = new AbortController();
    const late = setTimeout(() => stop.abort(), 30000);
    try {
      const response = await fetch(address, { ...options, cache: "no-store", signal: stop.signal });
      return { status: response.status, text: await response.text() };
    } catch {
      return undefined;
    } finally {
      clearTimeout(late);
    }
  };
  // Behind a proxy a server that is away answers with 502 to 504.
  const isAway = (answer) => !answer || answer.status >= 500 || answer.status === 429 || answer.status === 408;
  const sendOne = async (mark, isDirect) => {
    const answer = await asked(mark.garden, { method: "POST", body: new URLSearchParams(mark.fields) });
    isReached = !isAway(answer);
    if (!isReached) return undefined;
    const next = answer.status === 200 ? parsed(answer.text) : undefined;
    const box = next && next.querySelector("[data-outcome]");
    if (!box) {
      if (isKept("mark", mark.id)) keep("mark", { ...mark, trouble: next ? "no answer that this page knows" : answer.text.trim().slice(0, 200) });
      return undefined;
    }
    if (!isDirect) keep("told", { id: mark.id, at: mark.at, words: mark.words, name: mark.name, html: box.outerHTML });
    forget("mark", mark.id);
    return mark.garden === page.garden ? next : undefined;
  };
  const sendAll = async (direct) => {
    const tried = new Set();
    for (;;) {
      const mark = keptOf("mark").find(({ id }) => !tried.has(id));
      if (!mark) break;
      tried.add(mark.id);
      const isDirect = mark.id === direct || sending.has(mark.id);
      const next = await sendOne(mark, isDirect);
      sending.delete(mark.id);
      if (next) renew(next, isDirect ? mark : undefined);
      else show();
      if (!isReached) break;
    }
  };
  const send = async (direct) => {
    clearTimeout(timer);
    isAskedAgain = isBusy;
    if (isBusy) return;
    isBusy = true;
    const work = () => sendAll(direct);
    try {
      await (navigator.locks ? navigator.locks.request("feedround-send", work) : work());
    } finally {
      isBusy = false;
      sending.clear();
      show();
    }
    if (isAskedAgain && isReached) return send();
    waitMs = isReached ? 0 : Math.min(300000, Math.max(5000, waitMs * 2));
    if (keptOf("mark").length > 0) timer = setTimeout(send, waitMs || 300000);
  };`;
