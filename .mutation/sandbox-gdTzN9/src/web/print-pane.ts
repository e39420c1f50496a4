/** What is to be printed, as it will look, in a frame of its own. */
// @ts-nocheck

import { byId, styleNonce } from "./dom.js";
import type { Made } from "./messages.js";
import { download } from "./places.js";

export function isPrintOpen(): boolean {
  return byId("print").hasAttribute("open");
}

/** @param remake of labels, for another size */
export function showPrint(made: Made, remake: (size: string) => void): void {
  const dialog = byId("print") as HTMLDialogElement;
  const frame = document.createElement("iframe");
  frame.title = "As it will be printed";
  frame.sandbox.add("allow-same-origin", "allow-modals");
  // The frame stands under the page's own policy, which names its styles by the nonce.
  frame.srcdoc = made.text.replaceAll("<style>", `<style nonce="${styleNonce()}">`);
  dialog.querySelector(".frame-place")?.replaceChildren(frame);
  byId("print-now").onclick = () => frame.contentWindow?.print();
  byId("print-save").onclick = () => {
    download(made.name, made.type, made.text);
  };
  const select = dialog.querySelector("select");
  byId("sizes").hidden = made.sizes === undefined;
  if (select !== null && made.sizes !== undefined) {
    select.replaceChildren(...made.sizes.map((size) => new Option(size)));
    select.onchange = () => {
      remake(select.value);
    };
  }
  if (!dialog.open) dialog.showModal();
}
