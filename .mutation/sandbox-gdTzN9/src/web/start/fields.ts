/** Fields of a form: a label, what is typed, and what is wrong with it. */
// @ts-nocheck

import { made } from "../dom.js";

export interface FormField {
  readonly name: string;
  readonly element: HTMLElement;
  readonly wasAnswered: () => boolean;
  /** Empty where nothing is wrong. */
  readonly tell: (words: string) => void;
  readonly focus: () => void;
}

export interface TextField extends FormField {
  readonly value: () => string;
  readonly put: (value: string) => void;
}

interface FieldOptions {
  readonly value?: string;
  readonly type?: "text" | "date";
  readonly inputMode?: "decimal" | "numeric";
  readonly hint?: string;
  readonly offered?: readonly string[];
}

let fieldsSoFar = 0;

export function field(label: string, name: string, options: FieldOptions = {}): TextField {
  const { value = "", type = "text", inputMode = "", hint, offered } = options;
  const input = made("input", { type, value, inputMode, autocomplete: "off" });
  const list = offered?.map((word) => made("option", { value: word }));
  const id = `start-${fieldsSoFar++}`;
  if (list !== undefined) input.setAttribute("list", `${id}-offered`);
  const words = hint === undefined ? label : `${label} (${hint})`;
  const more = list === undefined ? [] : [made("datalist", { id: `${id}-offered` }, ...list)];
  return {
    ...labelled(words, name, id, input, more),
    value: () => input.value,
    put: (fresh) => {
      input.value = fresh;
      input.dispatchEvent(new Event("change", { bubbles: true }));
    },
  };
}

export function chosen<Key extends string>(
  label: string,
  name: string,
  options: Readonly<Record<Key, string>>,
  first?: Key,
): FormField & { readonly value: () => Key } {
  const keys = Object.keys(options) as Key[];
  const select = made(
    "select",
    {},
    ...keys.map((key) => made("option", { value: key, selected: key === first }, options[key])),
  );
  const id = `start-${fieldsSoFar++}`;
  return { ...labelled(label, name, id, select, []), value: () => select.value as Key };
}

/** Fields under a question, and what else belongs to it. */
export function group(question: string, ...parts: readonly (FormField | Node)[]): HTMLElement {
  const inside = parts.map((part) => (part instanceof Node ? part : part.element));
  return made("fieldset", {}, made("legend", {}, question), ...inside);
}

/** Of several inputs, whose words stand below them. */
group.field = (
  name: string,
  whole: HTMLElement,
  first: () => HTMLElement | undefined,
): FormField => {
  const { element, answered, tell } = telling(name, `start-${fieldsSoFar++}`, [whole], whole);
  return { name, element, wasAnswered: answered, tell, focus: () => first()?.focus() };
};

function labelled(
  label: string,
  name: string,
  id: string,
  input: HTMLInputElement | HTMLSelectElement,
  more: readonly Node[],
): FormField {
  input.id = id;
  const caption = made("label", { htmlFor: id }, label);
  const { element, answered, tell } = telling(name, id, [caption, input, ...more], input);
  return {
    name,
    element,
    wasAnswered: answered,
    tell: (words) => {
      tell(words);
      input.setAttribute("aria-invalid", String(words !== ""));
    },
    focus: () => {
      input.focus();
    },
  };
}

function telling(name: string, id: string, inside: readonly Node[], described: HTMLElement) {
  const wrong = made("p", { className: "wrong", id: `${id}-wrong`, dir: "auto" });
  const element = made("div", { className: "field" }, ...inside, wrong);
  element.dataset["field"] = name;
  described.setAttribute("aria-describedby", wrong.id);
  let isAnswered = false;
  element.addEventListener("change", () => {
    isAnswered = true;
  });
  return {
    element,
    answered: () => isAnswered,
    tell: (words: string) => {
      wrong.textContent = words;
    },
  };
}
