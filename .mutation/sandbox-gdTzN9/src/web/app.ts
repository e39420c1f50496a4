/** The writing page: a garden file on the left, its plan on the right. */
// @ts-nocheck

import { chooseText } from "./conflict.js";
import { byId, button, nowMs, styleNonce } from "./dom.js";
import { type EditorOptions, type GardenEditor, plainEditor } from "./garden-editor.js";
import { readKept } from "./kept.js";
import type { Answered, Making, Wanted, Writing } from "./messages.js";
import type { Problem } from "../problem.js";
import { onLinksInPage } from "./page-links.js";
import { planPane } from "./plan-pane.js";
import { planner } from "./planner.js";
import { chosenFiles, download, openedFile, type OpenedFile, openFile, rawText } from "./places.js";
import { isPrintOpen, showPrint } from "./print-pane.js";
import { onServer, openFromServer, serverFile } from "./server-place.js";
import { nowhere, session, type Session } from "./session.js";
import { keepPage } from "./keep-page.js";
import { askQuestions } from "./questions.js";
import { startWorker } from "./start-worker.js";
import { inFormOf, shownText } from "./text-form.js";

/** What was opened beside the garden file. */
const named: Record<string, string> = {};
let calendar: string | undefined;
let withReasons = false;
let editor: GardenEditor | undefined;
let current: Session;
let text = "";
let problems: readonly Problem[] = [];

const pane = planPane(openWanted);
const {
  plan,
  make,
  start: checkStart,
} = planner(startWorker, (answered) => {
  const isOfText = ({ file }: Problem): boolean => file === current.name();
  const ofText = answered.kind === "problems" ? answered.problems.filter(isOfText) : [];
  pane.show(answered, editor?.listsProblems === true ? ofText : []);
  if (answered.kind === "failed") return;
  problems = ofText;
  editor?.setProblems(problems);
});

function writing(): Writing {
  const file = current.name();
  return {
    ...{ text, file, nowMs: nowMs(), named },
    ...(calendar === undefined ? {} : { calendar }),
  };
}

function replan(): void {
  plan(writing(), withReasons);
}

function changed(fresh: string): void {
  text = fresh;
  current.changed(fresh);
  replan();
}

function put(fresh: string): void {
  // The editor tells of it as of any change.
  if (editor === undefined) changed(fresh);
  else editor.setText(fresh);
}

function tell(told: string, ...more: readonly Node[]): void {
  byId("told").replaceChildren(told, ...more);
}

/** A button for a file that the garden names; a calendar may not be there yet. */
function openWanted({ name, kind }: Wanted): readonly Node[] {
  const opening: Node = button(`Open ${name}`, () => {
    void chosenFiles().then(async ([file]) => {
      if (file !== undefined) await takeNamed(name, kind, file);
    });
  });
  if (kind !== "calendar") return [opening];
  const none = button("There is none yet", () => {
    calendar = "";
    replan();
  });
  return [opening, none];
}

async function takeNamed(name: string, kind: Wanted["kind"], file: File): Promise<void> {
  const raw = await rawText(file);
  if (!raw.ok) {
    tell(raw.problems.join(" "));
    return;
  }
  if (kind === "calendar") calendar = raw.value;
  else named[name] = shownText(raw.value);
  replan();
}

function open(opened: OpenedFile): void {
  calendar = undefined;
  current.open(opened);
  editor?.focus();
}

async function openExample(name: string): Promise<void> {
  const { example, exampleFiles } = await import("./examples.js");
  Object.assign(named, exampleFiles);
  open({ raw: example(name), place: nowhere });
}

async function makeAndGive(what: Making): Promise<void> {
  const wanted = byId("wanted").querySelector<HTMLElement>("[data-kind=calendar]");
  if (what.kind === "calendar" && wanted !== null) {
    tell("First say whether the garden's calendar is there already, so that none of it is lost.");
    wanted.querySelector("button")?.focus();
    return;
  }
  give(await make(writing(), what), what);
}

function give(answered: Answered, what: Making): void {
  if (answered.kind !== "made") {
    pane.show(answered);
    tell("Mend the garden file first.");
    return;
  }
  const { name, type, text: content } = answered.made;
  if (what.kind === "calendar") {
    download(name, type, content);
    // The next one goes on from it.
    calendar = content;
    tell(`${name} is among your downloads; open it here again before you write the next one.`);
    replan();
  } else showPrint(answered.made, (size) => void remake(size));
}

/** Labels of another size, unless what was to be printed has been closed meanwhile. */
async function remake(size: string): Promise<void> {
  const what = { kind: "labels", size } as const;
  const answered = await make(writing(), what);
  if (isPrintOpen()) give(answered, what);
}

/** The text that was left unsaved, else the server's, else an example to begin with. */
async function firstText(): Promise<{ opened: OpenedFile; text?: string; before?: string }> {
  const address = serverFile();
  const kept = readKept();
  const isUnsaved = kept !== undefined && inFormOf(kept.raw, kept.text) !== kept.raw;
  if (address !== undefined) {
    const opened = isUnsaved ? undefined : await openFromServer(address);
    if (opened !== undefined) return { opened };
    if (kept !== undefined) {
      const place = onServer(address, kept.seen ?? "");
      return { opened: { raw: kept.raw, place }, ...leftOver(kept) };
    }
    tell("The server cannot be reached: this is an example, not your garden.");
  } else if (kept !== undefined) {
    // A file cannot be written again after the page was closed: it is saved anew.
    return { opened: { raw: kept.raw, place: { ...nowhere, name: kept.name } }, ...leftOver(kept) };
  }
  const { example } = await import("./examples.js");
  return { opened: { raw: example("back-garden"), place: nowhere } };
}

function leftOver({ text: left, before }: { text: string; before?: string }) {
  return { text: left, ...(before === undefined ? {} : { before }) };
}

async function start(): Promise<void> {
  const first = await firstText();
  text = first.text ?? shownText(first.opened.raw);
  current = session({ ...first, put, tell, choose: chooseText });
  replan();
  putEditor(plainEditor, undefined);
}

/**
 * The page can be written in at once; what was typed by then goes on in the better editor. That does not
 * wait for the schema, without which nothing is offered or explained.
 */
async function putBetterEditor(): Promise<void> {
  const schema = {};
  const { gardenEditor } = await import("./editor/index.js");
  putEditor(gardenEditor, schema);
  // It tells them itself.
  if (problems.length > 0) replan();
  const told = await import("../../schemas/garden.schema.json", { with: { type: "json" } });
  Object.assign(schema, told.default);
}

function putEditor(make: (options: EditorOptions) => GardenEditor, schema: unknown): void {
  const wasIn = byId("editor").contains(document.activeElement);
  editor = make({ text, nonce: styleNonce(), schema, onChange: changed });
  byId("editor").replaceChildren(editor.element);
  editor.setProblems(problems);
  if (wasIn) editor.focus();
}

function onClick(id: string, act: () => void | Promise<void>): void {
  byId(id).addEventListener("click", () => void act());
}

onClick("open", async () => {
  const opened = await openFile();
  if (opened?.ok === false) tell(opened.problems.join(" "));
  else if (opened !== undefined) open(opened.value);
});
onClick("questions", () =>
  askQuestions(
    (answers) => checkStart(answers, nowMs()),
    (fresh) => {
      open({ raw: fresh, place: nowhere });
    },
  ),
);
onClick("save", () => current.save());
onClick("more", () => {
  withReasons = true;
  replan();
});
for (const choice of document.querySelectorAll<HTMLElement>("[data-example]"))
  choice.addEventListener("click", () => void openExample(choice.dataset["example"] ?? ""));
for (const choice of document.querySelectorAll<HTMLElement>("[data-make]"))
  choice.addEventListener("click", () => {
    void makeAndGive({ kind: choice.dataset["make"] } as Making);
  });
for (const closing of document.querySelectorAll("dialog .close"))
  closing.addEventListener("click", () => {
    closing.closest("dialog")?.close();
  });
for (const menu of document.querySelectorAll("details.menu"))
  menu.addEventListener("click", ({ target }) => {
    if (target instanceof HTMLButtonElement) menu.removeAttribute("open");
  });
document.addEventListener("keydown", (event) => {
  if (event.key !== "s" || !(event.ctrlKey || event.metaKey)) return;
  event.preventDefault();
  void current.save();
});
document.addEventListener("dragover", (event) => {
  event.preventDefault();
});
document.addEventListener("drop", (event) => {
  event.preventDefault();
  void dropped([...(event.dataTransfer?.files ?? [])]);
});
onLinksInPage(() => {
  withReasons = true;
  replan();
});

/** A file that the garden names is taken for that one; any other YAML file is a garden. */
async function dropped(files: readonly File[]): Promise<void> {
  const wanted = [...byId("wanted").querySelectorAll<HTMLElement>("[data-name]")];
  for (const file of files) {
    const { name = "", kind } =
      wanted.find(({ dataset }) => dataset["name"]?.split("/").at(-1) === file.name)?.dataset ?? {};
    if (name !== "") await takeNamed(name, kind === "calendar" ? kind : "named", file);
    else if (/\.ics$/i.test(file.name)) await takeNamed(file.name, "calendar", file);
    else {
      const opened = await openedFile(file);
      if (opened.ok) open(opened.value);
      else tell(opened.problems.join(" "));
    }
  }
}

void start().then(putBetterEditor).then(keepPage);
