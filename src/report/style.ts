/**
 * The report's style sheet: phone first, two columns on a wide screen, light and dark, and for A4 paper. `fontFaces`:
 * `@font-face` rules, or nothing.
 */
export function reportStyle(fontFaces: string): string {
  return `${fontFaces}
:root{color-scheme:light dark;--paper:#fffdf8;--sheet:#f6f2e8;--ink:#22262b;--quiet:#5b6269;--rule:#d8d3c6;--first:#0b4f5c;--second:#9c4f1f}
@media screen and (prefers-color-scheme:dark){:root{--paper:#1b1f23;--sheet:#23282d;--ink:#ece8df;--quiet:#aab0b5;--rule:#3c434a;--first:#8fd0d8;--second:#e29a66}}
*{box-sizing:border-box}
body{margin:0;background:var(--paper);color:var(--ink);font:1rem/1.5 "Atkinson Hyperlegible",system-ui,sans-serif;overflow-wrap:anywhere}
main{max-width:72rem;margin:0 auto;padding:1rem}
header{border-left:6px solid var(--first);padding-left:1rem;margin:.5rem 0 1rem}
.kind{margin:0;color:var(--quiet)}
h1{font-size:1.75rem;line-height:1.2;margin:.1rem 0 .8rem}
h2{font-size:1.3rem;line-height:1.25;margin:2.2rem 0 .6rem;padding-top:.6rem;border-top:1px solid var(--rule)}
h3{font-size:1.05rem;line-height:1.3;margin:0 0 .5rem}
p,ul,ol{margin:.4rem 0}
p,li,dd{max-width:68ch}
.note,figcaption,.about{color:var(--quiet);font-size:.92rem}
.lead{font-size:1.15rem}
dl{margin:0}
.facts div,.words div{display:grid;grid-template-columns:8.5rem 1fr;gap:0 .8rem;padding:.1rem 0}
dt{color:var(--quiet)}
dd{margin:0}
.words dt{color:var(--ink);font-weight:700}
ol.lines{padding-left:1.4rem}
.lines li{margin:.5rem 0;max-width:none}
.notation{display:flex;flex-wrap:wrap;margin:.2rem 0 .8rem;row-gap:.4rem}
.notation svg{display:block;flex:none}
.notation .staff,.notation .stem,.notation .bar{stroke:currentColor;fill:none;stroke-width:1.2}
.notation .beam{stroke:currentColor;stroke-width:4;fill:none}
.notation .head{fill:currentColor}
.notation .accent{stroke:var(--first);stroke-width:2.2;fill:none;stroke-linejoin:miter}
.notation .rest{stroke:var(--quiet);stroke-width:1.8;fill:none}
.notation text{fill:currentColor;font-size:13px;text-anchor:middle}
.notation .count{font-size:11px;font-style:italic;fill:var(--quiet)}
.notation .hand.strong{font-weight:700;fill:var(--first)}
.notation .grace,.notation .buzz{font-size:11px}
.letters{font-family:ui-monospace,monospace}
table{border-collapse:collapse;width:100%;max-width:60rem}
th,td{text-align:left;vertical-align:top;padding:.3rem .7rem .3rem 0;border-bottom:1px solid var(--rule)}
thead th{color:var(--quiet);font-weight:400;border-bottom:2px solid var(--rule)}
tbody th{font-weight:400}
.number{text-align:right;font-variant-numeric:tabular-nums}
td.number{white-space:nowrap}
.name{display:block;font-weight:700}
.about{display:block;max-width:60ch}
.group th{padding-top:1.2rem;font-weight:700;font-size:1.05rem;color:var(--first)}
.parent th{border-bottom:0;padding-bottom:0}
.part th{padding-left:1rem}
.reason{color:var(--quiet)}
ol.advice{padding-left:0;list-style:none;counter-reset:advice}
.advice li{counter-increment:advice;position:relative;padding:.5rem .8rem .5rem 3rem;margin:.5rem 0;background:var(--sheet);max-width:none}
.advice li::before{content:counter(advice);position:absolute;left:.9rem;top:.3rem;font-size:1.5rem;line-height:1.4;color:var(--first);font-weight:700}
.moments{color:var(--quiet)}
button{font:inherit;color:var(--ink);background:var(--paper);border:1px solid var(--quiet);border-radius:3px;padding:.3rem .7rem;min-height:2.2rem;cursor:pointer}
:is(button,select,input):focus-visible,summary:focus-visible,.scroll:focus-visible{outline:3px solid var(--second);outline-offset:2px}
.pictures{display:grid;grid-template-columns:minmax(0,1fr);gap:2rem}
.picture{margin:0;min-width:0}
.sheet{position:relative;height:23rem}
.sheet canvas{display:none}
.sheet img{display:block;width:100%;height:100%;object-fit:contain;object-position:left top;background:#fffdf8}
.drawn .sheet canvas{display:block}
.drawn .sheet img{display:none}
figcaption{margin-top:.5rem;max-width:64ch}
.sheet canvas:focus-visible{outline:3px solid var(--second);outline-offset:2px}
.open-questions{margin-top:2rem}
.open-questions .note{display:block}
#stroke-bar{position:fixed;inset:auto 0 0 0;z-index:2;display:flex;flex-wrap:wrap;gap:.3rem .8rem;align-items:center;padding:.5rem 1rem;background:var(--sheet);border-top:3px solid var(--first)}
#stroke-bar[hidden]{display:none}
#stroke-bar p{flex:1 1 16rem;margin:0;max-width:none}
summary{cursor:pointer;padding:.35rem 0}
.fold>summary{list-style:none;padding:0;position:relative}
.fold>summary::-webkit-details-marker{display:none}
.fold>summary>*{padding-right:2rem}
.fold>summary::after{content:"+";position:absolute;right:.2rem;bottom:.3rem;font-size:1.5rem;line-height:1;color:var(--first)}
.fold[open]>summary::after{content:"−"}
.scroll{overflow-x:auto;max-width:100%}
.scroll table{font-size:.92rem;overflow-wrap:normal}
.scroll td,.scroll th{white-space:nowrap}
.scroll thead th{white-space:normal;min-width:4.5rem}
#scores .scroll :is(td,th){white-space:normal}
footer{margin:2.5rem 0 1rem;padding-top:.8rem;border-top:1px solid var(--rule);color:var(--quiet);font-size:.92rem}
@media (max-width:40rem){
.pictures{gap:.6rem}
.picture>.fold{border-bottom:1px solid var(--rule);padding:.5rem 0}
.picture>.fold:not([open]) h3{margin:0}
html{font-size:.97rem}
.sheet{height:auto;min-height:0}
.drawn .sheet{height:21rem}
.sheet img{height:auto}
.facts div{grid-template-columns:1fr;padding:.25rem 0}
.words div{grid-template-columns:1fr;padding:.25rem 0}
table.figures,.figures tbody,.figures tr,.figures th[scope],.figures td{display:block;border-bottom:0;padding:0;text-align:left;white-space:normal}
.figures thead{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}
.figures tr{border-bottom:1px solid var(--rule);padding:.4rem 0}
.figures .part{padding-left:1rem}
table.figures td[data-name]{display:inline-block;padding-right:1rem}
.figures td[data-name=range]::before{content:"likely between ";color:var(--quiet)}
.figures td[data-name=strokes]::after{content:" strokes";color:var(--quiet)}
}
@media (min-width:40.01rem){.fold>summary::after{opacity:.55}}
@media (min-width:62rem){
main{padding:1.5rem 2rem}
#scores .picture{display:grid;grid-template-columns:1fr 1fr;column-gap:3rem}
#scores h3{grid-column:1/-1}
.pictures{grid-template-columns:repeat(2,minmax(0,1fr));gap:2.5rem 3rem}
.picture.wide{grid-column:1/-1}
.facts{display:grid;grid-template-columns:1fr 1fr;column-gap:2rem}
}
@page{size:A4;margin:12mm 13mm}
@media print{
.fold>summary::after{display:none}
:root{color-scheme:light}
html{font-size:9.2pt}
body{line-height:1.35}
main{max-width:none;padding:0}
h1{font-size:1.5rem}
h2{margin:.9rem 0 .3rem;padding-top:.3rem;break-after:avoid}
h3{font-size:1rem;margin-bottom:.2rem}
.facts{display:grid;grid-template-columns:1fr 1fr;column-gap:1.5rem}
.facts div{grid-template-columns:7rem 1fr}
.notation svg{height:52px;width:auto}
.lines li{margin:.2rem 0}
.advice li{padding:.2rem .6rem .2rem 2.2rem;margin:.25rem 0;break-inside:avoid;border-left:2px solid var(--first);background:none}
.advice li::before{top:0;left:.7rem;font-size:1.2rem}
.pictures{grid-template-columns:repeat(3,minmax(0,1fr));gap:.8rem 1.2rem}
.picture{break-inside:avoid}
.sheet,.drawn .sheet{height:auto}
.with-image .sheet canvas{display:none!important}
.drawn:not(.with-image) .sheet canvas{width:100%!important;height:auto!important}
.sheet img,.drawn .sheet img{display:block;height:auto;width:100%}
details:not(.fold),#listen,#words,.about,#stroke-bar,#stroke-hint,.open-questions,.picture:not(.printed){display:none}
table{max-width:none}
th,td{padding:.1rem .5rem .1rem 0}
.group th{padding-top:.5rem}
tr{break-inside:avoid}
#scores .picture{display:grid;grid-template-columns:1fr 1fr;column-gap:1.2rem}
#scores h3{grid-column:1/-1}
.lines{display:grid;grid-template-columns:1fr 1fr;gap:0 1.5rem}
.pictures figcaption{font-size:.88em}
#pictures>.note{break-after:avoid}
#figures{break-before:page}
.figures{display:block;columns:2;column-gap:1.5rem;font-size:.86em}
.figures thead{display:none}
.figures tbody,.figures th,.figures td{display:block}
.figures tr{display:grid;grid-template-columns:1fr auto 9.5rem 1.8rem;border-bottom:1px solid var(--rule)}
.figures th,.figures td{border:0}
.figures .group,.figures .parent{break-after:avoid}
.figures .group{padding-top:.35rem}
.figures .group th,.figures .parent th,.figures .reason{grid-column:1/-1;padding-top:0}
.moments button{border:0;padding:0;min-height:0;background:none}
footer{margin:.8rem 0 0}
}`;
}
