/** The one garden file that is being written, where it lies, and what is kept of it. */
// @ts-nocheck

import { byId, button, made } from "./dom.js";
import { forgetKept, keep, type Kept } from "./kept.js";
import { chosenPlace, downloads, type OpenedFile, type Place, type Saved } from "./places.js";
import { inFormOf, shownText } from "./text-form.js";

export interface Session {
  readonly name: () => string;
  readonly raw: () => string;
  readonly isUnsaved: () => boolean;
  /** Another text takes the place of this one, which is kept where it was not saved. */
  readonly open: (opened: OpenedFile) => void;
  /** The editor's text is another. */
  readonly changed: (text: string) => void;
  readonly save: () => Promise<void>;
}

export interface SessionOptions {
  readonly opened: OpenedFile;
  /** Unsaved, from before the page was closed. */
  readonly text?: string;
  readonly before?: string;
  /** Puts a text into the editor. */
  readonly put: (text: string) => void;
  readonly tell: (told: string, ...more: readonly Node[]) => void;
  /** Both texts are shown; the grower chooses. */
  readonly choose: (theirs: string, mine: string) => Promise<"mine" | "theirs" | "back">;
}

export function session({ opened, put, tell, choose, ...rest }: SessionOptions): Session {
  let place: Place = opened.place;
  let savedRaw = opened.raw;
  let text = rest.text ?? shownText(opened.raw);
  let before = rest.before;
  let isForgotten = false;

  const raw = (): string => inFormOf(savedRaw, text);
  const isUnsaved = (): boolean => raw() !== savedRaw;

  function remember(): void {
    const seen = place.seen();
    const kept: Kept = {
      ...{ name: place.name, text, raw: savedRaw },
      ...(seen === undefined ? {} : { seen }),
      ...(before === undefined ? {} : { before }),
    };
    const isKept = !isForgotten && keep(kept);
    byId("file-name").textContent = place.name + (isUnsaved() ? ", not saved" : "");
    const said = isKept
      ? "The text is kept in this browser, on this device alone. "
      : isForgotten
        ? "Nothing is kept in this browser until you write on. "
        : "This browser keeps nothing: save the file before you close the page. ";
    const forgetting = button("Forget it", () => {
      isForgotten = true;
      before = undefined;
      forgetKept();
      remember();
    });
    const back = before;
    const bringing =
      back === undefined
        ? []
        : [
            button("Bring back the text before this one", () => {
              before = text;
              put(back);
            }),
          ];
    byId("keeping").replaceChildren(
      made("p", { className: "soft" }, said, ...(isKept ? [forgetting] : []), ...bringing),
    );
  }

  function open(next: OpenedFile): void {
    if (isUnsaved()) before = text;
    place = next.place;
    savedRaw = next.raw;
    put(shownText(next.raw));
    remember();
  }

  async function settle(saved: Saved, mine: string): Promise<void> {
    if (saved.kind === "saved") {
      savedRaw = mine;
      tell(saved.told);
    } else if (saved.kind === "refused") {
      const instead = button("Download it instead", () => void downloads(place.name).save(mine));
      tell(saved.told, instead);
    } else {
      const choice = await choose(shownText(saved.theirs), shownText(mine));
      if (choice !== "back") saved.accept();
      if (choice === "mine") return settle(await place.save(mine), mine);
      if (choice === "theirs") {
        before = text;
        savedRaw = saved.theirs;
        put(shownText(saved.theirs));
        tell("This is the file's text now; yours is kept below the editor.");
      } else tell("Not saved: the file holds another text.");
    }
    remember();
  }

  remember();
  return {
    name: () => place.name,
    raw,
    isUnsaved,
    open,
    changed: (fresh) => {
      isForgotten &&= fresh === text;
      text = fresh;
      remember();
    },
    save: async () => {
      const mine = raw();
      if (place === nowhere) place = (await chosenPlace(place.name)) ?? nowhere;
      if (place !== nowhere) await settle(await place.save(mine), mine);
    },
  };
}

/** A text that was begun here. */
export const nowhere: Place = {
  ...downloads("garden.yaml"),
};
