/** The little that is asked of the document. */
// @ts-nocheck


/** Of the page's own markup: it is always there. */
export function byId(id: string): HTMLElement {
  const found = document.getElementById(id);
  if (found === null) throw new Error(`no #${id} in the page`);
  return found;
}

/** An element with its properties and what is in it. */
export function made<Tag extends keyof HTMLElementTagNameMap>(
  tag: Tag,
  properties: Partial<HTMLElementTagNameMap[Tag]> = {},
  ...inside: readonly (Node | string)[]
): HTMLElementTagNameMap[Tag] {
  const element = Object.assign(document.createElement(tag), properties);
  element.append(...inside);
  return element;
}

export function button(words: string, act: () => void): HTMLButtonElement {
  const element = made("button", { type: "button" }, words);
  element.addEventListener("click", act);
  return element;
}

/** What the page's head says under a name: of its policy, or what a server put in. */
export function headSays(name: string): string | undefined {
  return document.querySelector<HTMLMetaElement>(`meta[name="${name}"]`)?.content;
}

/** The nonce that styles of the page bear, as its policy names it. */
export function styleNonce(): string {
  return headSays("csp-nonce") ?? "";
}

/** The clock's, or noon of UTC of the day that a server shows its gardens on. */
export function nowMs(): number {
  const today = headSays("today");
  return today === undefined ? Date.now() : Date.parse(`${today}T12:00:00Z`);
}
