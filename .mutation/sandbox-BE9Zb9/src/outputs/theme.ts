/** The colours of all outputs, by what they mean. Each text colour has at least 4.5:1 on its background. */
// @ts-nocheck


export const inkLight =
  "--paper:#f6f3ea;--card:#fffdf8;--ink:#23291f;--soft:#565e50;--line:#d8d3c4;--accent:#1c5c43;--on-accent:#ffffff;--water:#1a5d84;--spray:#7a3f8f;--warn:#8a3d00;--warn-paper:#fdeedb;--growing:#e6e3d9;--fed:#d3e6f0";
export const inkDark =
  "--paper:#151913;--card:#1e231b;--ink:#eef0e6;--soft:#b3baa9;--line:#3a4135;--accent:#86d6ac;--on-accent:#0c2116;--water:#7cc0ec;--spray:#d8a6ea;--warn:#ffc27a;--warn-paper:#3a2a14;--growing:#343b2f;--fed:#1d4157";
