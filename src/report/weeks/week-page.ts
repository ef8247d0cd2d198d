import { escapeHtml, outsideText } from '../escape-html.ts';
import { pageHead } from '../page-head.ts';
import { safeScript } from '../safe-script.ts';
import { type Sha256, securityPolicy } from '../security-policy.ts';
import { wholeFiguresHtml } from '../whole-figures-html.ts';
import { weekStyleText } from './week-style.ts';

/** What every page on several takes needs besides its contents. */
export interface PageParts {
  readonly fontFaces: string;
  readonly sha256: Sha256;
  /** Text of the script that draws the pictures, or null. */
  readonly script: string | null;
  /** Still pictures by id. */
  readonly images: Readonly<Record<string, string>>;
}

interface PageContents {
  /** What kind of page it is, above its title. */
  readonly kind: string;
  /** Untrusted. */
  readonly title: string;
  readonly lead: string;
  readonly body: string;
  /** Script elements with data. */
  readonly data: string;
}

/** A page on several takes as one HTML file that loads nothing. `lead`, `body` and `data` are HTML. */
export function weekPage(
  { kind, title, lead, body, data }: PageContents,
  { fontFaces, sha256, script }: PageParts,
): string {
  const style = weekStyleText(fontFaces);
  const scripts = script === null ? [] : [safeScript(script)];
  return wholeFiguresHtml(`${pageHead({ title, kind: kind.toLowerCase(), style, policy: securityPolicy(style, scripts, sha256) })}
<body>
<main class="weeks">
<header><p class="kind">${escapeHtml(kind)}</p>
<h1>${outsideText(title)}</h1>
${lead}</header>
${body}
<footer>This file holds the whole page. Opening it loads nothing from elsewhere and sends nothing anywhere.</footer>
</main>
${data}${scripts.map((text) => `<script>${text}</script>\n`).join('')}</body>
</html>
`);
}
