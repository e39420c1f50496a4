/** Line ends of a garden file: of Unix, of Windows, or a carriage return alone. */

/** With a line feed for each carriage return that stands alone: every place in it is where it was. */
export function lineFeeds(text: string): string {
  return text.replace(/\r(?!\n)/g, "\n");
}

/** The first line end of a text. */
export function newlineOf(text: string): string {
  return /\r\n|\r|\n/.exec(text)?.[0] ?? "\n";
}

/** Edits of a text's {@link lineFeeds}, to be made in itself: each with the line end of its place. */
export function withLineEndsOf<T extends { readonly at: number; readonly text: string }>(
  text: string,
  edits: readonly T[],
): readonly T[] {
  return edits.map((edit) => ({
    ...edit,
    text: edit.text.replace(/\r?\n/g, lineEndAt(text, edit.at)),
  }));
}

/** That of the line at an offset; behind the last one, that before it. */
function lineEndAt(text: string, at: number): string {
  const behind = /\r\n|\r|\n/.exec(text.slice(at));
  return behind?.[0] ?? /(\r\n|\r|\n)[^\r\n]*$/.exec(text)?.[1] ?? "\n";
}
