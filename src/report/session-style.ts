/** What the page before a session's reports has besides the reports' own style. */
export const sessionStyle = `
a{color:var(--first)}
a:focus-visible{outline:3px solid var(--second);outline-offset:2px}
.session-lines{padding-left:1.6rem}
.session-lines li{max-width:none;padding:.45rem 0;border-bottom:1px solid var(--rule)}
.session-lines li>span{display:inline-block;margin-left:.8rem}
.session-lines .reason{display:block;margin-left:0}
.mark{font-weight:700;font-variant-numeric:tabular-nums;white-space:nowrap}
.mark span{font-weight:400}
.mark.not-yet{text-decoration:underline dotted 2px;text-underline-offset:3px}
.session-takes{max-width:none}
.session-takes th[scope=row]{font-weight:700;min-width:11rem}
.session-takes td[data-name=report]{white-space:nowrap}
.session-takes td[data-name=at]{white-space:nowrap;font-variant-numeric:tabular-nums}
.session-takes a{display:inline-block;padding:.45rem 0}
.sr{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}
@media (max-width:48rem){
.session-takes,.session-takes tbody,.session-takes tr,.session-takes th[scope=row],.session-takes td{display:block;border:0;padding:.05rem 0}
.session-takes thead{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}
.session-takes tr{border-bottom:1px solid var(--rule);padding:.6rem 0}
.session-takes td[data-name=at]{color:var(--quiet)}
}
@media print{.session-takes tr{break-inside:avoid}.session-takes a{color:inherit}}
`;
