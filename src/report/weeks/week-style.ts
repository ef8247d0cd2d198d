import { reportStyleText } from '../report-style-text.ts';

/** What pages on several takes have besides the reports' own style. */
const weekStyle = `
.verdict{border:2px solid var(--first);padding:.6rem .9rem;margin:.8rem 0;max-width:68ch;font-size:1.1rem}
.verdict p{margin:.2rem 0}
.unlike{border:2px dashed var(--second);padding:.6rem .9rem;margin:.8rem 0;max-width:68ch}
.two{display:grid;grid-template-columns:minmax(0,1fr);gap:1rem 2rem}
audio{width:100%;max-width:30rem;display:block}
.weeks td:not(:first-child),.weeks th[scope=col]:not(:first-child){font-variant-numeric:tabular-nums}
.weeks td.word{font-weight:700}
.pair-controls{display:flex;flex-wrap:wrap;gap:.5rem 1rem;align-items:center;margin:.6rem 0}
.pair-controls[hidden]{display:none}
.pair-controls button{min-height:3rem}
.pair-controls label{display:inline-flex;gap:.5rem;align-items:center;min-height:3rem}
audio:focus-visible{outline:3px solid var(--second);outline-offset:2px}
.exercise-weeks{margin-top:2rem}
.weak>li{margin:.6rem 0}
.day{white-space:nowrap}
.write-here{display:none}
.weeks td p{margin:.1rem 0}
.stack th[scope=col]{overflow-wrap:normal}
.players{max-width:none}
@media (max-width:48rem){
table.stack,.stack tbody,.stack tr,.stack th[scope=row],.stack td{display:block;border:0;padding:.05rem 0;text-align:left;white-space:normal}
.stack thead{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}
.stack tr{border-bottom:1px solid var(--rule);padding:.5rem 0}
.stack th[scope=row]{font-weight:700}
.stack td[data-name]::before{content:attr(data-name) ": ";color:var(--quiet);font-weight:400}
.stack td:empty{display:none}
}
@media (min-width:62rem){.two{grid-template-columns:repeat(2,minmax(0,1fr))}}
@media print{
audio,.pair-controls,.screen-only,.weeks>footer{display:none!important}
.write-here{display:block;border:1px solid currentColor;min-height:45mm;margin:.4rem 0;break-inside:avoid}
.asked,.weak>li{break-inside:avoid}
.two{grid-template-columns:1fr 1fr}
.weeks .pictures{grid-template-columns:repeat(2,minmax(0,1fr))}
.weeks .sheet img{max-height:55mm;object-fit:contain;object-position:left top}
.verdict,.unlike{padding:.2rem .5rem;margin:.3rem 0;break-inside:avoid}
}
`;

/**
 * The one style sheet of a page on several takes; its digest stands in its policy, and in a policy round a shown one.
 */
export const weekStyleText = (fontFaces: string): string => reportStyleText(fontFaces, false) + weekStyle;
