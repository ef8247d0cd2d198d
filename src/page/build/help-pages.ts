import { readFile } from 'node:fs/promises';
import { basename } from 'node:path';
import { Marked } from 'marked';
import type { Plugin } from 'vite';
import { wholeFiguresHtml } from '../../report/whole-figures-html.ts';
import { helpAddress } from '../help/help-address.ts';

/** A heading's anchor, as readers of the repository have it. */
const slug = (text: string) =>
  text
    .toLowerCase()
    .replace(/[^\p{L}\p{N} -]/gu, '')
    .replaceAll(' ', '-');

/**
 * A page of the help as HTML: headings have anchors, links lead to the help's own pages or, where they lead out of it,
 * are left as text; what may be wider than a phone can be scrolled by keys.
 *
 * @example helpPage('handbook.md', '# A\n[b](#c)') // '<h1 id="a">A</h1>\n<p><a href="#/help/measures/c">b</a></p>\n'
 */
export function helpPage(file: string, text: string): string {
  const marked = new Marked({
    renderer: {
      heading({ tokens, depth }) {
        const inner = this.parser.parseInline(tokens);
        return `<h${depth} id="${slug(inner.replace(/<[^>]*>/g, ''))}">${inner}</h${depth}>\n`;
      },
      link({ href, tokens }) {
        const inner = this.parser.parseInline(tokens);
        const to = helpAddress(file, href);
        return to === null ? inner : `<a href="${to}">${inner}</a>`;
      },
    },
  });
  return wholeFiguresHtml(marked.parse(text, { async: false }) as string)
    .replaceAll('<pre>', '<pre tabindex="0">')
    .replaceAll('<table>', '<div class="wide" tabindex="0"><table>')
    .replaceAll('</table>', '</table></div>');
}

const asked = /\.md\?html$/;

/** Gives the page a guide or the handbook as HTML, for `import html from './guide.md?html'`. */
export function helpPages(): Plugin {
  return {
    name: 'help-pages',
    enforce: 'pre',
    async load(id) {
      if (!asked.test(id)) return undefined;
      const path = id.replace(/\?html$/, '');
      return `export default ${JSON.stringify(helpPage(basename(path), await readFile(path, 'utf8')))};`;
    },
  };
}
