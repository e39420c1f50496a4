/** A page that was opened once over https opens without a network. */
// @ts-nocheck

import { headSays } from "./dom.js";
import { serverFile } from "./server-place.js";

export async function keepPage(): Promise<void> {
  // Absent on plain http; a page of one file has nothing to keep.
  if (!("serviceWorker" in navigator) || location.protocol === "file:") return;
  const workers = navigator.serviceWorker;
  try {
    if (serverFile() === undefined) await workers.register("service-worker.js");
    else await keepWithServer(workers);
  } catch {
    // The page works all the same while there is a network.
  }
}

/** The server's own service worker keeps the tick page, too, and is told what this one is made of. */
async function keepWithServer(workers: ServiceWorkerContainer): Promise<void> {
  await workers.register("../service-worker.js", { scope: "../" });
  const { active } = await workers.ready;
  const files = headSays("page-files") ?? "";
  const addresses = files.split(" ").map((file) => new URL(file, document.baseURI).href);
  active?.postMessage({ keep: [location.href, ...addresses] });
}
