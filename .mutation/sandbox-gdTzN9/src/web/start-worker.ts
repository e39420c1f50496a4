/** The worker's own script lies beside the page, or inside it where the page is one file. */
// @ts-nocheck

export function startWorker(): Worker {
  const inside = document.getElementById("worker-script")?.textContent;
  if (inside === undefined)
    return new Worker(new URL("worker.js", document.baseURI), { type: "module" });
  return new Worker(URL.createObjectURL(new Blob([inside], { type: "text/javascript" })));
}
