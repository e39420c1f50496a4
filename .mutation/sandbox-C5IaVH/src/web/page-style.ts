/** What the writing page takes of the other pages' style, when it is built. */
// @ts-nocheck

import { narrowTables, pageStyle } from "../outputs/index.js";

/** The plan has but a part of the window. */
export const sharedStyle = `${pageStyle}
#parts{container:parts/inline-size}@container parts (max-width:44em){${narrowTables}}`;
