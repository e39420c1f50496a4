/** A form sent to a garden -> what became of it, written once however often it comes. */
// @ts-nocheck

import { randomBytes } from "node:crypto";
import { withLocks } from "../lock.js";
import type { Result } from "../problem.js";
import { type Fields, readTick } from "../ticks/index.js";
import { given } from "../values.js";
import { only } from "./form-body.js";
import { asOf, type GardenShow, type ShowContext } from "./garden-show.js";
import type { GardenWriter, Outcome } from "./garden-writer.js";
import {
  formsPath,
  hashOfFields,
  lately,
  readForms,
  type SentForm,
  withForm,
  writeForms,
} from "./sent-forms.js";
import { type Trouble, troubleLine, troubleOf } from "./system-trouble.js";

/** 128 bits, as base64url. */
export function newFormId(): string {
  return randomBytes(16).toString("base64url");
}

const formId = /^[\w-]{22}$/;

export function formIdIn(fields: Fields): string | undefined {
  const id = only(fields, "form");
  return id !== undefined && formId.test(id) ? id : undefined;
}

export interface FormContext extends ShowContext {
  readonly writer: GardenWriter;
}

export interface Sent {
  /** Under which its outcome is kept. */
  readonly id: string;
  readonly outcome: Outcome;
  /** Whether it could be kept. */
  readonly isKept: boolean;
  /** For the terminal. */
  readonly lines: readonly string[];
}

/**
 * Forms of one garden go one after the other. What was written is answered again as it was; what was
 * refused wrote nothing and is tried again, as a form is that was mended and sent once more. Trouble:
 * another process works on the garden's forms.
 */
export function sendForm(
  show: GardenShow,
  id: string,
  fields: Fields,
  context: FormContext,
): Promise<Result<Sent, Trouble>> {
  const work = (): Promise<Sent> => sendLocked(show, id, fields, context);
  const path = formsPath(context.stateDir, show.file);
  const turn = (show.sending ?? Promise.resolve()).then(() =>
    withLocks([path], work, given({ pause: context.pause })),
  );
  show.sending = turn.catch(() => undefined);
  return turn;
}

async function sendLocked(
  show: GardenShow,
  id: string,
  fields: Fields,
  context: FormContext,
): Promise<Sent> {
  const { stateDir } = context;
  const { forms, notice } = await readForms(stateDir, show.file);
  const lines = notice === undefined ? [] : [notice];
  const hash = hashOfFields(fields);
  const before = forms.find((form) => form.id === id);
  const done = before === undefined ? undefined : toldOfDone(before.outcome);
  if (before?.hash === hash && done !== undefined)
    return { id, outcome: before.outcome, isKept: true, lines };
  const form: SentForm =
    done === undefined
      ? { id, hash, ...(await actOn(show, fields, forms, context)) }
      : { id: newFormId(), hash, outcome: usedBefore(done) };
  const undone = form.outcome.kind === "written" && form.isUndo ? only(fields, "of") : undefined;
  const others = forms.map((one) =>
    one.id === undone ? { ...one, isTakenBack: true as const } : one,
  );
  const told = { id: form.id, outcome: form.outcome };
  try {
    await writeForms(stateDir, show.file, withForm(others, form));
    return { ...told, isKept: true, lines };
  } catch (error) {
    const trouble = troubleLine(troubleOf(error, stateDir));
    return { ...told, isKept: false, lines: [...lines, trouble] };
  }
}

function toldOfDone(outcome: Outcome): string | undefined {
  return outcome.kind === "written" || outcome.kind === "already" ? outcome.told : undefined;
}

/** Another button of a form that was sent, after going back in the browser. */
function usedBefore(told: string): Outcome {
  const line = `this form was sent before (${told}): take that back, or mark it on a page that is loaded again`;
  return { kind: "refused", told: [line] };
}

async function actOn(
  show: GardenShow,
  fields: Fields,
  forms: readonly SentForm[],
  context: FormContext,
): Promise<Pick<SentForm, "outcome" | "isUndo">> {
  const { writer, now } = context;
  const at = asOf(show, now());
  const asked = readTick(fields);
  if (!asked.ok) return { outcome: { kind: "refused", told: asked.problems.map(troubleLine) } };
  if (asked.value.kind === "tick")
    return { outcome: await writer.tick(show.file, asked.value.tick, at) };
  const { of } = asked.value;
  const canTakeBack = lately(forms).some((one) => one.form === of && one.canTakeBack);
  const form = canTakeBack ? forms.find(({ id }) => id === of) : undefined;
  if (form?.outcome.kind !== "written") {
    const line = "it was taken back before, or is none of the last ten: change the garden file";
    return { outcome: { kind: "refused", told: [line] }, isUndo: true };
  }
  return { outcome: await writer.takeBack(show.file, form.outcome.undo, at), isUndo: true };
}
