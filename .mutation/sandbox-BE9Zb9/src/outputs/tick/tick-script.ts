// @ts-nocheck
import { keptScript } from "./script-kept.js";
import { sendScript } from "./script-send.js";
import { showScript } from "./script-show.js";

/** The beginning is last: what it uses stands above it. */
const startScript = `
  // Where a browser keeps nothing it sends the forms itself.
  try {
    localStorage.setItem("feedround-try", "");
    localStorage.removeItem("feedround-try");
  } catch {
    return;
  }
  const keepPage = async () => {
    if (!navigator.serviceWorker) return;
    const { active } = await navigator.serviceWorker.ready;
    active.postMessage({ keep: [new URL(page.garden || "./", location.href).href, new URL("./", location.href).href] });
    const told = document.getElementById("kept-page");
    if (told) told.hidden = false;
  };
  document.addEventListener("submit", (event) => {
    const form = event.target;
    if (!form.dataset.key) return;
    const mark = markOf(form, event.submitter);
    try {
      keep("mark", mark);
    } catch {
      return;
    }
    event.preventDefault();
    touched.delete(form);
    sending.add(mark.id);
    show();
    send(mark.id);
  });
  document.addEventListener("input", ({ target }) => target.form && touched.add(target.form));
  addEventListener("storage", show);
  const again = () => {
    waitMs = 0;
    send();
  };
  addEventListener("online", () => {
    again();
    refresh();
  });
  addEventListener("pageshow", ({ persisted }) => persisted && refresh());
  document.addEventListener("visibilitychange", () => {
    if (document.hidden) return;
    again();
    if (Date.now() - renewedAt > 60000 || isOld()) refresh();
  });
  if (navigator.serviceWorker) navigator.serviceWorker.register("service-worker.js").then(keepPage, () => undefined);
  show();
  send();`;

/**
 * Keeps what is marked until the server has answered, and shows what waits. One constant, so that a
 * Content-Security-Policy can name its hash.
 */
export const tickScript = `(() => {${keptScript}${sendScript}${showScript}${startScript}
})();`;
