// @ts-nocheck
import { inkDark, inkLight } from "./theme.js";

/** What pages on a screen share: colours by light, type, and the mark of what has the focus. */
export const baseStyle = `:root{color-scheme:light dark;${inkLight}}
@media (prefers-color-scheme:dark){:root{${inkDark}}}
*{box-sizing:border-box}
html{-webkit-text-size-adjust:100%}
body{margin:0;background:var(--paper);color:var(--ink);font:1rem/1.5 system-ui,"Segoe UI",Roboto,"Liberation Sans",Arial,sans-serif}
h1,h2,h3,p,ul,ol,dl,dd,figure{margin:0;padding:0}
ul,ol{list-style:none}
h1,h2,h3,p,li,dd,td,th,summary,figcaption{overflow-wrap:anywhere}
a{color:var(--accent)}
:focus-visible{outline:3px solid var(--accent);outline-offset:2px}
`;
