import { escapeHtml } from './escape-html.ts';

interface PageHead {
  /** What the page is of, as long as it may be. */
  readonly title: string;
  /** What kind of page it is, in a word or two. */
  readonly kind: string;
  readonly style: string;
  /** The content security policy. */
  readonly policy: string;
}

/**
 * The head of a page that stands alone in one file, from its first line on.
 *
 * @example pageHead({ title: 'Accent on one', kind: 'report', style: '', policy }) // '<!doctype html>\n<html lang="en">…'
 */
export function pageHead({ title, kind, style, policy }: PageHead): string {
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${escapeHtml(policy)}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">
<title>${escapeHtml(title.slice(0, 100))} – ${escapeHtml(kind)}</title>
<style>${style}</style>
</head>`;
}
