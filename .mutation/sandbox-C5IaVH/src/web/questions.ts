/** The five questions in the page, in the place of the text until they are answered or left. */
// @ts-nocheck

import { byId } from "./dom.js";
import type { Started } from "./checked-start.js";
import type { Answers } from "./starting-garden.js";

interface Snippets {
  readonly defaultSnippets: readonly { readonly label: string }[];
}

export async function askQuestions(
  check: (answers: Answers) => Promise<Started>,
  onDone: (text: string) => void,
): Promise<void> {
  const [{ startForm }, { default: schema }] = await Promise.all([
    import("./start/index.js"),
    import("../../schemas/garden.schema.json", { with: { type: "json" } }),
  ]);
  const { timezone, beds } = schema.properties;
  const { crop } = beds.items.properties.plantings.items.properties;
  const wordsOf = ({ defaultSnippets }: Snippets) => defaultSnippets.map(({ label }) => label);
  const place = byId("questions-place");
  const leave = (): void => {
    place.replaceChildren();
    place.hidden = true;
    for (const id of ["editor", "keeping"]) byId(id).hidden = false;
  };
  const form = startForm({
    timezone: new Intl.DateTimeFormat().resolvedOptions().timeZone,
    amounts: navigator.language === "en-US" ? "us" : "metric",
    crops: wordsOf(crop),
    timezones: wordsOf(timezone),
    check,
    onDone: (text) => {
      leave();
      onDone(text);
    },
    onCancel: () => {
      leave();
      document.querySelector<HTMLElement>("#editor [contenteditable], #editor textarea")?.focus();
    },
  });
  for (const id of ["editor", "keeping"]) byId(id).hidden = true;
  place.hidden = false;
  place.replaceChildren(form);
  form.querySelector("input")?.focus();
}
