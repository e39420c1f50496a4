/** The file holds another text than the one opened: both are shown, and the grower chooses. */
// @ts-nocheck

import { byId } from "./dom.js";

export async function chooseText(
  theirs: string,
  mine: string,
): Promise<"mine" | "theirs" | "back"> {
  const { lineChanges } = await import("./line-changes.js");
  const dialog = byId("texts") as HTMLDialogElement;
  byId("differing").textContent = lineChanges(theirs, mine);
  return new Promise((resolve) => {
    dialog.returnValue = "back";
    for (const choice of dialog.querySelectorAll("button"))
      choice.onclick = () => {
        dialog.close(choice.value);
      };
    dialog.onclose = () => {
      const { returnValue: value } = dialog;
      resolve(value === "mine" || value === "theirs" ? value : "back");
    };
    dialog.showModal();
  });
}
