// @ts-nocheck
import { baseStyle } from "../base-style.js";
import { calciumCardStyle } from "../calcium-card.js";
import { drawingsStyle } from "../picture/index.js";
import { inkLight } from "../theme.js";
import { narrowWaterTable } from "../water-table.js";

/** Tables where there is no room for their columns. */
export const narrowTables = `.bottles thead{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}
.bottles,.bottles caption,.bottles tbody,.bottles tr,.bottles th,.bottles td{display:block}
.bottles tr{border:1px solid var(--line);border-radius:.5rem;margin-top:.6rem;padding:.35rem .7rem}
.bottles th,.bottles td{border:0;padding:.1rem 0}
.bottles td{display:flex;flex-wrap:wrap;column-gap:.5rem}
.bottles td::before{content:attr(data-head);width:6rem;color:var(--soft)}
.bottles table,.bottles{background:none}
${narrowWaterTable}`;

/** All of the page's style. One constant, so that a Content-Security-Policy can name its hash. */
export const pageStyle = `${baseStyle}.skip{position:absolute;left:-100vw;padding:.5rem 1rem;background:var(--card)}
.skip:focus{left:.5rem;top:.5rem}
header,main,footer{max-width:72rem;margin:0 auto;padding:0 .75rem}
header{padding-top:1rem}
h1{font-size:1.35rem;line-height:1.25}
h2{font-size:1.3rem;line-height:1.3;margin-bottom:.5rem}
h3{font-size:1.05rem;line-height:1.35}
.soft,.note,.season{color:var(--soft)}
nav{margin-top:.75rem}
nav ul{display:flex;flex-wrap:wrap;gap:0 1.1rem}
nav a{display:inline-flex;align-items:center;min-height:48px}
main>section{margin-top:2rem}
[hidden]{display:none!important}
[dir=auto]{text-align:left}
.asked{margin-top:.75rem!important}
.asked h2{font-size:clamp(1.3rem,5.2vw,1.8rem);line-height:1.25;margin-bottom:.25rem}
.asked .then,.asked .none{font-size:1.1rem}
.asked .written{color:var(--soft)}
.asked .old{color:var(--warn);font-weight:700}
.soon{margin-top:.5rem;border:0;border-left:5px solid var(--warn);border-radius:.25rem;background:var(--warn-paper)}
.soon summary{padding:.6rem .75rem;font-weight:700}
.soon>div{padding:0 .25rem .5rem}
.soon .warning{margin-top:0;border:0}
.next{margin-top:.75rem!important;background:var(--card);border:2px solid var(--accent);border-radius:.9rem;padding:.75rem}
.next h2{display:flex;flex-wrap:wrap;align-items:baseline;gap:0 .6rem;margin:0;font-size:1rem;color:var(--accent)}
.next .day{font-size:1.2rem;color:var(--ink)}
.next .when{margin-left:auto}
.totals{font-size:1.05rem}
.take{font-size:1.1rem;margin-top:.4rem}
.mixing{margin-top:.5rem}
.mixing li{font-size:1.2rem;font-weight:700;line-height:1.45;color:var(--water)}
.bed-lines{display:grid;grid-template-columns:repeat(auto-fill,minmax(min(100%,26rem),1fr));gap:0 1.25rem;align-items:start;margin-top:.6rem;border-top:1px solid var(--line)}
.bed-line summary{display:flex;flex-wrap:wrap;align-items:center;align-content:center;gap:0 .75rem;padding:.2rem 0}
.bed-line summary::-webkit-details-marker{display:none}
.bed-line .cans{display:flex;flex-wrap:wrap;gap:0 .75rem;justify-content:flex-end;flex:1 1 0;overflow-wrap:break-word;font-weight:700;color:var(--water)}
.bed-line .cans span{max-width:100%;overflow-wrap:break-word}
.bed-line summary .unusual{flex-basis:100%}
.unusual{display:block;color:var(--warn);font-weight:700}
.beds{display:grid;grid-template-columns:repeat(auto-fill,minmax(min(100%,21rem),1fr));gap:.75rem;margin-top:.75rem}
.bed{border:1px solid var(--line);border-radius:.6rem;padding:.6rem .7rem;background:var(--paper);break-inside:avoid}
.bed h3{font-size:1.2rem}
.mix+.mix{border-top:1px dashed var(--line);margin-top:.6rem;padding-top:.5rem}
.route{color:var(--soft)}
.fills li{display:grid;grid-template-columns:auto 1fr;column-gap:.6rem;align-items:center;padding:.2rem 0}
.fills .sign{overflow:visible}
.pair{display:flex;flex-wrap:wrap;justify-content:space-between;align-items:baseline;gap:0 .6rem}
.count{font-size:1.15rem;font-weight:700;line-height:1.2}
.stock{font-size:1.5rem;font-weight:700;line-height:1.2;color:var(--water)}
.water{color:var(--soft)}
.vessel{fill:none;stroke:var(--ink);stroke-width:1.75;stroke-linecap:round;stroke-linejoin:round}
.sign .fill{fill:var(--water);fill-opacity:.55}
.for{margin-top:.15rem}
.for a{display:block;padding:.75rem 0}
.cautions{margin-top:.9rem;padding-left:1.1rem;list-style:disc;color:var(--soft);font-size:.95rem}
.warning{margin-top:.6rem;padding:.5rem .75rem;border-left:5px solid var(--warn);border-radius:.25rem;background:var(--warn-paper)}
.warning b{color:var(--warn)}
.mend{display:block}
.changed{margin-top:.75rem}
.others{margin-top:.75rem}
.trouble{margin-top:.75rem;padding:.75rem 1rem;border:2px solid var(--warn);border-radius:.6rem;background:var(--warn-paper)}
.trouble li{margin-top:.4rem}
.jobs li{padding:.3rem 0}
code{font:max(.9em,.875rem) ui-monospace,"Liberation Mono",monospace}
.jobs code{overflow-wrap:anywhere;color:var(--soft)}
.frame{container:picture/inline-size;background:var(--card);border:1px solid var(--line);border-radius:.6rem;padding:.5rem .75rem}
.picture-box{container:picture/inline-size}
.key{display:flex;flex-wrap:wrap;gap:.35rem .6rem;margin:.25rem 0 .75rem;font-size:14px}
.key li{display:flex;align-items:center;gap:.3rem}
.defs{position:absolute}
.calcium li{margin-top:.9rem}
.amounts{display:block;margin:.25rem 0;border-left:2px solid var(--ink)}
.amounts .from-stock{fill:var(--water)}
.amounts .from-tap{stroke:var(--ink);stroke-width:1}
.parts{display:flex;flex-wrap:wrap;gap:.1rem 1.2rem}
.chip{display:inline-block;width:.9em;height:.9em;margin-right:.4em;vertical-align:-.08em;border:1px solid var(--ink)}
.chip.from-stock{background:var(--water)}
.chip.from-tap{background:repeating-linear-gradient(135deg,var(--card) 0 3px,var(--soft) 3px 4px)}
.clear{color:var(--soft)}
.weeks{margin-top:.9rem}
.week ul{display:grid;grid-template-columns:repeat(auto-fill,minmax(min(100%,19rem),1fr));gap:0 1rem}
.scale{margin-top:.5rem}
.origins{display:grid;grid-template-columns:repeat(auto-fill,minmax(min(100%,21rem),1fr));gap:.75rem;margin-top:.75rem}
.origin{border:1px solid var(--line);border-radius:.6rem;padding:.6rem .7rem;background:var(--card)}
.origin h3 .soft{font-weight:400;font-size:1rem}
.amount-rows li,.origin .soil,.origin .verdict{margin-top:.4rem}
.amount-rows .soft,.origin .soil,.origin .verdict{font-size:.95rem}
.note{margin-top:.75rem}
table{border-collapse:collapse;width:100%;margin:.75rem 0;background:var(--card)}
caption{text-align:start;font-weight:700;padding:.25rem 0;background:var(--paper)}
thead th,td{overflow-wrap:break-word}
th,td{text-align:start;vertical-align:top;padding:.4rem .6rem;border:1px solid var(--line)}
details{border-bottom:1px solid var(--line)}
summary{min-height:48px;padding:.6rem .25rem;cursor:pointer}
summary .where,summary .told{display:block;color:var(--soft);padding-left:1.1rem}
details>div{padding:.25rem .25rem 1rem 1.25rem}
dl{margin:.5rem 0}
dl div{padding:.15rem 0}
dt{font-weight:700}
dt::first-letter{text-transform:uppercase}
.stages,.feedings{padding-left:1.1rem;list-style:disc}
.reason h3{margin-top:.6rem}
.steps{padding-left:1.3rem;list-style:decimal}
.steps>li{margin-top:.5rem}
.steps time{font-weight:700}
.steps .cautions{margin-top:.1rem}
.sum{color:var(--soft)}
.reason>p::first-letter{text-transform:uppercase}
.links{display:flex;flex-wrap:wrap;gap:1rem 2rem;align-items:flex-start}
.links p{margin-bottom:.6rem}
.button{display:inline-block;padding:.65rem 1.1rem;border-radius:.5rem;background:var(--accent);color:var(--on-accent);font-weight:700;text-decoration:none}
.address{font-family:ui-monospace,"Liberation Mono",monospace;font-size:.9rem;overflow-wrap:anywhere}
.qr{background:#fff;padding:.6rem;border-radius:.5rem;line-height:0}
.qr svg{display:block;width:11rem;height:11rem}
.plain{padding-left:1.1rem;list-style:disc}
footer{margin-top:2.5rem;padding-bottom:2rem;color:var(--soft);font-size:.95rem}
footer .cautions{margin-top:0}
@media (max-width:44rem){
${narrowTables}}
@media (min-width:44rem){h1{font-size:1.7rem}header,main,footer{padding-left:1.5rem;padding-right:1.5rem}.next{padding:1.25rem 1.5rem}.count{font-size:1.3rem}}
@media (min-width:44rem){.water-weeks th:first-child{width:17%}.water-weeks .gap{width:22%}}
@page{margin:12mm}
.on-paper{display:none}
@media print{
:root{color-scheme:light;${inkLight};--paper:#fff;--card:#fff}
body{font-size:10pt}
nav,.skip,#subscribe .button,details:not([open],.bed-line>*,.soon:not([hidden])),.days:not(:has(>[open])),.asked .written:not(.old){display:none}
section:not(:has(>:not(h2,details:not([open]),.days:not(:has(>[open]))))){display:none}
header,main,footer{max-width:none;padding:0}
main>section{margin-top:5mm}
.next{padding:3mm 4mm}
.next .day{font-size:14pt}
.bed-lines{grid-template-columns:1fr 1fr}
.bed-line summary{min-height:0}
.beds{grid-template-columns:repeat(auto-fill,minmax(56mm,1fr))}
.count{font-size:11pt}
.stock{font-size:13pt}
.cautions{font-size:8.5pt;line-height:1.35}
h2{font-size:13pt}
.origins{grid-template-columns:1fr 1fr;gap:2mm}
.origin{font-size:8.5pt;padding:1mm 2mm}
.origin h3,.origin h3 .soft{font-size:9.5pt}
.amount-rows .soft,.origin .soil,.origin .verdict{font-size:8.5pt}
.amount-rows li,.origin .soil,.origin .verdict{margin-top:.5mm}
h2,h3,caption{break-after:avoid}
tr,.jobs li,.calcium li,.warning,.on-paper{break-inside:avoid}
.on-paper{display:block}
footer{display:none}
.picture,.amounts,.sign,.chip{print-color-adjust:exact;-webkit-print-color-adjust:exact}
}
${calciumCardStyle}
${drawingsStyle}
`;
