// @ts-nocheck
import { calciumCardStyle } from "../calcium-card.js";
import { drawingsStyle } from "../picture/index.js";
import { inkLight } from "../theme.js";
import { narrowWaterTable } from "../water-table.js";
import { lineMm, type papers, sheetMarginMm } from "./paper.js";

/** Tables as blocks: columns of paper would hold a few letters each. */
const onPhone = `@media screen and (max-width:44rem){
.cautions ul{columns:1}
${narrowWaterTable}.list,.list tbody{display:block}
.list tr{display:grid;grid-template-columns:10mm 1fr;border-bottom:.4pt solid #999}
.list tr>*{grid-column:2;border:0;padding:.6mm 1.5mm}
.list tr>:first-child{grid-column:1;grid-row:1/4}
}
`;

/** The season sheet's style: ink on white, whatever the reader's setting. */
export function sheetStyle({ widthMm, heightMm }: (typeof papers)[keyof typeof papers]): string {
  return `:root{color-scheme:light;${inkLight};--paper:#fff;--card:#fff}
@page{size:${widthMm}mm ${heightMm}mm;margin:${sheetMarginMm}mm;@bottom-right{content:counter(page) " / " counter(pages);font:8pt sans-serif}}
*{box-sizing:border-box}
body{margin:0 auto;max-width:${widthMm - 2 * sheetMarginMm}mm;padding:4mm 0;background:#fff;color:var(--ink);font:9.5pt/1.35 system-ui,"Segoe UI",Roboto,"Liberation Sans",Arial,sans-serif}
h1,h2,h3,p,ul,ol{margin:0;padding:0}
h1{font-size:18pt;line-height:1.2}
h2{font-size:12.5pt;margin:5mm 0 1.5mm;break-after:avoid}
h1,h2,p,li,td,th{overflow-wrap:anywhere}
code{font:.9em ui-monospace,"Liberation Mono",monospace}
.defs{position:absolute}
.cautions{break-inside:avoid;font-size:7.5pt;line-height:1.2;margin-top:2mm;padding:1mm 3mm;border:1.5pt solid var(--ink)}
.cautions ul{padding-left:4mm;columns:2;column-gap:6mm}
.cautions li{break-inside:avoid}
.picture-box{container:picture/inline-size}
.key{display:flex;flex-wrap:wrap;gap:1mm 2.5mm;list-style:none;margin-bottom:2mm;break-after:avoid}
.key li{display:flex;align-items:center;gap:1.5mm}
table{width:100%;border-collapse:collapse;table-layout:fixed}
th,td{text-align:start;vertical-align:top;padding:.9mm 1.5mm;border-bottom:.4pt solid #999}
thead th{border-bottom:1pt solid var(--ink)}
thead{break-after:avoid}
tr{break-inside:avoid}
.list{font:9.5pt/${lineMm}mm Arial,"Liberation Sans",Arimo,sans-serif}
.list td{padding-block:.6mm}
.list+.list{break-before:page}
.list td:first-child{width:10mm;padding-inline:0}
.list tr>:first-child{width:10mm}
.list .ticks{width:10mm}
.list .who{width:27%}
.head>*{background:#efece2;border-top:1pt solid var(--ink);vertical-align:middle;height:8mm;padding-block:0}
.head th{font-size:14pt}
.head .totals{font-weight:400;font-size:9pt}
.notes td{color:var(--soft);font-size:8pt;height:10mm;border-bottom:.8pt solid var(--ink)}
.short tr>*{height:9.4mm;vertical-align:middle;padding-block:0}
.short th{font-size:12pt;width:38%}
.short td:last-child{font-size:12pt}
.small{font-size:7.5pt;line-height:1.2;margin-top:2mm}
.season{break-inside:avoid}
.box{display:inline-block;border:1pt solid var(--ink);width:4mm;height:4mm;line-height:3.6mm;text-align:center;vertical-align:top}
.box.round{width:6mm;height:6mm;line-height:5.4mm;border-width:1.5pt}
.picture,.box,.head>*{print-color-adjust:exact;-webkit-print-color-adjust:exact}
.water-weeks{font-size:8.5pt}
.water-weeks caption{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}
.water-weeks thead th:first-child{width:20%}
.water-weeks thead th.gap{width:24%}
.plain{padding-left:4mm;font-size:8.5pt}
.soft,.note,.scale{color:var(--soft)}
.water-weeks th,.water-weeks td{padding-inline:.8mm}
.water-weeks td{overflow-wrap:normal}
@media screen{body{padding:4mm}}
${onPhone}${calciumCardStyle}
${drawingsStyle}
`;
}
