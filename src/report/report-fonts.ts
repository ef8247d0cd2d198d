import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';

/** `@font-face` rules for the report's type in two weights, with the fonts inside (SIL Open Font License 1.1). */
export async function reportFonts(): Promise<string> {
  const { resolve } = createRequire(import.meta.url);
  const rules = [400, 700].map(async (weight) => {
    const file = `@fontsource/atkinson-hyperlegible/files/atkinson-hyperlegible-latin-${weight}-normal.woff2`;
    const bytes = await readFile(resolve(file));
    const source = `url(data:font/woff2;base64,${bytes.toString('base64')}) format("woff2")`;
    return `@font-face{font-family:"Atkinson Hyperlegible";font-weight:${weight};src:${source}}`;
  });
  return (await Promise.all(rules)).join('\n');
}
