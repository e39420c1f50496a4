/** The editor in the page's own colours, by day and by night. */
// @ts-nocheck

import { HighlightStyle, syntaxHighlighting } from "@codemirror/language";
import type { Extension } from "@codemirror/state";
import { EditorView } from "@codemirror/view";
import { tags } from "@lezer/highlight";

const colours = HighlightStyle.define([
  { tag: tags.propertyName, color: "var(--accent)", fontWeight: "700" },
  { tag: [tags.content, tags.string], color: "var(--ink)" },
  { tag: [tags.separator, tags.bracket, tags.punctuation, tags.meta], color: "var(--soft)" },
  { tag: tags.comment, color: "var(--soft)", fontStyle: "italic" },
  { tag: [tags.labelName, tags.typeName, tags.keyword], color: "var(--spray)" },
]);

const theme = EditorView.theme({
  "&": {
    flex: "1",
    minHeight: "12rem",
    maxHeight: "max(70vh, 12rem)",
    border: "1px solid var(--line)",
    borderRadius: "0.5rem",
    backgroundColor: "var(--card)",
    color: "var(--ink)",
    fontSize: "max(0.9rem, 14px)",
  },
  "&.cm-focused": { outline: "3px solid var(--accent)", outlineOffset: "0" },
  ".cm-scroller": {
    fontFamily: 'ui-monospace, "Liberation Mono", "DejaVu Sans Mono", monospace',
    lineHeight: "1.6",
  },
  ".cm-content": { caretColor: "var(--ink)", padding: "0.5rem 0" },
  ".cm-cursor": { borderLeftColor: "var(--ink)", borderLeftWidth: "2px" },
  ".cm-gutters": { backgroundColor: "var(--card)", color: "var(--soft)", border: "0" },
  ".cm-activeLine, .cm-activeLineGutter": { backgroundColor: "var(--paper)" },
  "&.cm-focused .cm-selectionBackground, .cm-selectionBackground, .cm-content ::selection": {
    backgroundColor: "var(--fed) !important",
  },
  ".cm-lintRange-error": {
    backgroundImage: "none",
    textDecoration: "underline wavy var(--warn)",
    textUnderlineOffset: "0.2em",
    backgroundColor: "var(--warn-paper)",
  },
  ".cm-lintPoint-error:after": { borderBottomColor: "var(--warn)" },
  ".cm-tooltip": {
    maxWidth: "min(32rem, 92vw)",
    border: "1px solid var(--line)",
    borderRadius: "0.5rem",
    backgroundColor: "var(--card)",
    color: "var(--ink)",
    boxShadow: "0 0.3rem 1rem rgb(0 0 0 / 25%)",
    overflow: "hidden",
  },
  ".cm-tooltip .explained, .cm-tooltip.cm-completionInfo": { padding: "0.5rem 0.7rem" },
  ".cm-tooltip.cm-tooltip-autocomplete > ul": {
    fontFamily: "inherit",
    maxHeight: "16rem",
  },
  ".cm-tooltip.cm-tooltip-autocomplete > ul > li": { padding: "0.35rem 0.7rem" },
  ".cm-tooltip.cm-tooltip-autocomplete > ul > li[aria-selected]": {
    backgroundColor: "var(--accent)",
    color: "var(--on-accent)",
  },
  ".cm-completionDetail": { color: "var(--soft)", fontStyle: "normal" },
  "li[aria-selected] .cm-completionDetail": { color: "inherit" },
  ".cm-completionMatchedText": { textDecoration: "none", fontWeight: "700" },
  ".cm-snippetField": { backgroundColor: "var(--fed)" },
  ".cm-diagnostic": { padding: "0.5rem 0.7rem", borderLeft: "5px solid var(--warn)" },
  ".cm-diagnosticAction": {
    minHeight: "2.2rem",
    padding: "0.2rem 0.7rem",
    border: "1px solid var(--accent)",
    borderRadius: "0.4rem",
    backgroundColor: "var(--card)",
    color: "var(--accent)",
    font: "inherit",
    fontWeight: "700",
  },
});

export const look: Extension = [theme, syntaxHighlighting(colours)];
