/** Printed rows and lines of long sheets. */
const printedLines = 6;
const printedRows = 8;

/** Style of the first view, the table of lines, the explanations and the files; and what two sheets of paper hold. */
export const firstViewStyle = `
a{color:var(--first)}
a:focus-visible{outline:3px solid var(--second);outline-offset:2px}
.how{display:block;font-size:.85rem}
:target{background:var(--sheet)}
.repeats{display:block}
.repeats .held{fill:var(--first)}
.repeats .weak,.repeats .open{fill:none;stroke:var(--first);stroke-width:1.6}
.repeats .open{stroke-dasharray:3 2}
.repeats .cross{stroke:currentColor;stroke-width:1.8;fill:none}
#line-by-line .scroll :is(td,th){white-space:normal;min-width:5.5rem}
#line-by-line .scroll th[scope=row]{min-width:8rem}
#line-by-line .scroll td:nth-child(3){min-width:11rem}
@media screen and (max-width:40rem){
#breaking-point :is(table,tbody,tr,th[scope=row],td){display:block;border:0;padding:.05rem 0;white-space:normal}
#breaking-point thead{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}
#breaking-point tbody>tr:not(.x){border-bottom:1px solid var(--rule);padding:.4rem 0}
#breaking-point th[scope=row]{font-weight:700}
}
#files ul{padding:0;list-style:none}
#files li{margin:.5rem 0}
#files button{min-width:11rem;margin-right:.6rem;text-align:left}
@media (min-width:62rem){
main{max-width:82rem}
header{margin-top:0}
h1{margin-bottom:.3rem}
.first-view{display:grid;grid-template-columns:minmax(0,1fr) minmax(0,1fr);gap:0 3rem;align-items:start}
.first-view h2{margin-top:.8rem}
.first-view :is(#exercise,#limits){grid-column:1/-1}
.first-view #scores .picture{display:block}
.first-view #scores h3{display:none}
.first-view .sheet{height:18.5rem}
.first-view #scores figcaption,.first-view #scores .note,.first-view #limits{font-size:.88rem;line-height:1.4}
.first-view .advice li{padding-top:.3rem;padding-bottom:.3rem;margin:.35rem 0;line-height:1.4}
.first-view ol.lines{display:grid;grid-template-columns:repeat(3,minmax(0,1fr));gap:0 1.5rem}
.first-view .lines li{margin:.1rem 0}
.first-view .notation{margin:0}
}
@media (min-width:80rem){
.first-view{grid-template-columns:1.15fr 1.15fr .85fr;gap:0 2.2rem}
.first-view #limits{grid-column:3;grid-row:1}
.first-view #exercise{grid-row:2}
.first-view #limits ul{padding-left:1rem}
.first-view .sheet{height:17.5rem}
.first-view #scores figcaption{display:none}
.first-view .moments button{padding:.1rem .5rem;min-height:1.9rem}
}
@media (min-width:48rem){.facts,.facts div{display:flex;flex-wrap:wrap;gap:0 2.2rem}.facts div{gap:0 .6rem}}
@media print{
:root{--paper:#fff}
.facts{display:flex;gap:0 1.4rem}
.first-view #limits{grid-column:1/-1;font-size:.86em}
.first-view #limits ul{columns:2;column-gap:1.4rem}
header{margin:0 0 .4rem}
.first-view{display:grid;grid-template-columns:1fr 1fr;gap:0 1.4rem}
.first-view #exercise{grid-column:1/-1}
.first-view #scores .picture{display:block}
.first-view h2{margin-top:.4rem}
.first-view ol.lines{grid-template-columns:1fr 1fr 1fr}
.lines>li:nth-child(n+${printedLines + 1}),#line-by-line tbody tr:nth-child(n+${printedRows + 1}){display:none}
.lines:has(>li:nth-child(${printedLines + 1}))::after,#line-by-line:has(tbody tr:nth-child(${printedRows + 1}))::after{content:"The rest stands in the file.";color:var(--quiet)}
#line-by-line .repeats{height:24px;width:auto}
#line-by-line{font-size:.86em}
#line-by-line :is(td,th){padding-top:0;padding-bottom:0}
#pictures h2{border:0;margin-top:0}
#pictures .note,#pictures>h3,#pictures>ul,#figures,#how,#files,#words,#strokes,#model,.how,#listening{display:none}
#pictures .sheet img{max-height:42mm;object-fit:contain;object-position:left top}
#care p{margin:.2rem 0;max-width:none}
#care{font-size:.82em}
#pictures .pictures{gap:.4rem 1.2rem}
#pictures figcaption{font-size:.82em;margin-top:.1rem}
p,li,dd{max-width:none}
}`;
