// @ts-nocheck
import { baseStyle } from "../base-style.js";

/**
 * For wet hands and sun: what is pressed is at least 48 px high, and black on white or nearly. One
 * constant, so that a Content-Security-Policy can name its hash.
 */
export const tickStyle = `${baseStyle}header,main,footer{max-width:44rem;margin:0 auto;padding:0 .75rem}
header{padding-top:.75rem}
h1{font-size:1.35rem;line-height:1.25}
h2{font-size:1.3rem;line-height:1.3;margin-bottom:.5rem}
h3{font-size:1.15rem;line-height:1.35}
[hidden]{display:none!important}
[dir=auto]{text-align:left}
.soft,.hint,footer{color:var(--soft)}
nav ul{display:flex;flex-wrap:wrap;gap:0 1.25rem}
nav a,.garden{display:inline-flex;align-items:center;min-height:48px}
.garden{font-size:1.2rem;font-weight:700}
main>section{margin-top:1.75rem}
.none{font-size:1.1rem}
.card{display:block;background:var(--card);border:1px solid var(--line);border-radius:.7rem;padding:.75rem;margin-top:.6rem}
article.card{border:2px solid var(--accent)}
details.card{padding:0 .75rem}
details.card[open]{padding-bottom:.75rem}
summary{min-height:48px;padding:.7rem 0;cursor:pointer;font-size:1.1rem;font-weight:700;line-height:1.4}
summary .soft{font-weight:400;font-size:1rem}
summary .soft::before{content:"\\2013\\a0"}
summary .day{color:var(--accent)}
summary .what{display:block;padding-left:1.1rem}
.beds>li{margin-top:.35rem}
.beds .line{display:block;font-size:1.1rem}
.fold{margin-top:.6rem}
.fold>summary{font-size:1rem;color:var(--accent)}
.so-far{margin:.35rem 0}
button{display:block;width:100%;min-height:52px;margin-top:.6rem;padding:.6rem 1rem;border-radius:.6rem;border:2px solid var(--accent);font:inherit;font-size:1.15rem;font-weight:700;cursor:pointer;overflow-wrap:anywhere;touch-action:manipulation}
.main{background:var(--accent);color:var(--on-accent)}
.usual .main{min-height:64px;font-size:1.3rem}
.that-day:not([hidden])+.usual .main{background:var(--card);color:var(--accent);min-height:52px;font-size:1.15rem}
.that-day .main{min-height:64px;font-size:1.3rem}
.other,.small{background:var(--card);color:var(--accent)}
button:disabled{border-style:dashed;background:var(--card);color:var(--soft);cursor:default}
form+form,p+form{margin-top:1rem}
fieldset{margin:.6rem 0 0;padding:.25rem .6rem .6rem;border:1px solid var(--line);border-radius:.5rem;min-width:0}
legend{padding:0 .25rem;font-weight:700;max-width:100%}
.check{display:flex;align-items:center;gap:.6rem;min-height:48px;overflow-wrap:anywhere}
.check input{width:1.75rem;height:1.75rem;flex:none;accent-color:var(--accent)}
.field{display:block;margin-top:.5rem}
.field>span{display:block}
.field input,.field select{width:100%;min-height:48px;padding:.4rem .6rem;border:2px solid var(--soft);border-radius:.5rem;background:var(--paper);color:var(--ink);font:inherit;font-size:1.15rem}
.entry{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(100%,11rem),1fr));gap:0 .75rem;align-items:end}
.outcome,.notice{margin-top:.9rem!important;padding:.75rem;border:2px solid var(--accent);border-left-width:.6rem;border-radius:.6rem;background:var(--card)}
.outcome h2:focus{outline:none}
.outcome p,.outcome li,.outcome dd{font-size:1.1rem}
.conflict,.refused,.notice{border-color:var(--warn);background:var(--warn-paper)}
dt{font-weight:700}
dd{margin-bottom:.5rem}
.plain{padding-left:1.1rem;list-style:disc}
.lately>li{padding:.6rem 0;border-bottom:1px solid var(--line)}
.unsent li{margin-top:.6rem}
.waits-told{margin-top:.5rem;font-weight:700;color:var(--warn)}
code{font:max(.9em,.875rem) ui-monospace,"Liberation Mono",monospace}
footer{margin-top:2rem;padding-bottom:2rem}
footer p{margin-top:.5rem}
@media (min-width:44rem){
h1{font-size:1.7rem}
.lately>li{display:grid;grid-template-columns:1fr minmax(9rem,auto);gap:1rem;align-items:center}
.lately button{margin-top:0}
}
`;
