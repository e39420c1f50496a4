/** Paper sizes, mm. ISO 216 (A4) and ANSI/ASME Y14.1 size A (letter, 8.5 by 11 in). */
// @ts-nocheck

export const papers = {
  a4: { name: "A4", widthMm: 210, heightMm: 297 },
  letter: { name: "US letter", widthMm: 215.9, heightMm: 279.4 },
} as const;

export type Paper = keyof typeof papers;

export const sheetMarginMm = 12;

/** Of a line of text on the sheet. */
export const lineMm = 4.3;
