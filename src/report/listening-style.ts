/** The style of the listening part, for a report with sound. */
export const listeningStyle = `
audio{width:100%;max-width:40rem;margin-top:.8rem}
.listening{margin-top:.8rem}
.listening[hidden],audio[hidden]{display:none}
.transport{min-height:2.4rem}
.transport>div{display:flex;flex-wrap:wrap;align-items:center;gap:.5rem}
.playing .transport>div{position:fixed;z-index:2;left:0;right:0;bottom:0;justify-content:center;padding:.5rem 1rem;background:var(--sheet);border-top:2px solid var(--first)}
body:has(.playing){padding-bottom:4rem}
body:has(.playing) #stroke-bar{bottom:3.6rem}
@media (max-width:40rem){body:has(.playing){padding-bottom:6.5rem}body:has(.playing) #stroke-bar{bottom:6rem}}
#listen-play{min-width:6.5rem;font-weight:700;background:var(--first);color:var(--paper);border-color:var(--first)}
#listen-place{font-variant-numeric:tabular-nums;margin-left:.4rem}
.listening input[type=range]{accent-color:var(--first)}
#listen-at{width:100%;margin:.5rem 0}
.wishes{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(100%,20rem),1fr));gap:.8rem 2rem}
fieldset{border:1px solid var(--rule);border-radius:3px;margin:0;padding:.5rem .9rem .7rem;min-width:0}
legend{padding:0 .3rem;color:var(--quiet)}
.listening label{display:block;padding:.25rem 0}
.listening label:has([type=radio],[type=checkbox]){display:grid;grid-template-columns:1.5rem 1fr;align-items:start}
.listening input:is([type=radio],[type=checkbox]){accent-color:var(--first);width:1.05rem;height:1.05rem;margin:.22rem 0 0}
select{font:inherit;color:var(--ink);background:var(--paper);border:1px solid var(--quiet);border-radius:3px;min-height:2.2rem;max-width:100%}
@media (scripting:none){button.moment{border:0;background:none;pointer-events:none}}
@media screen{button.moment{margin:.1rem 0;padding:.1rem .5rem;min-height:1.8rem;font-variant-numeric:tabular-nums}}
`;
