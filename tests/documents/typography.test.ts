import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const root = join(import.meta.dirname, '../..');

/** What people read, in the page, in reports, in a terminal and in papers, is written one way. */
const conventions: readonly { readonly what: string; readonly against: RegExp }[] = [
  { what: 'apostrophes and quotation marks are straight (\' and ")', against: /[‘’“”„‚‛‟′″]/u },
  { what: 'three dots are one sign (…)', against: /[\p{L} ]\.{3}(?![\w.[({$>\]])/u },
  { what: 'a space stands before per cent', against: /[\d}]%(?=[ ,.:;)]|$)(?!.*[;}]$)/mu },
  { what: 'a space stands before a unit', against: /\d(?:ms|dB|dBFS|k?Hz|BPM|kB|MB)\b/u },
  { what: 'no blank that does not show', against: /[\u200b\u00ad\u2028\u2029\u3000]/u },
];

const texts = [
  ...readdirSync(join(root, 'src'), { recursive: true, encoding: 'utf8' })
    .filter((path) => /\.(tsx?|md|html)$/.test(path))
    .map((path) => join('src', path)),
  'README.md',
  'DEVELOPERS.md',
];

describe.each(conventions)('$what', ({ against }) => {
  it('in every file', () => {
    const found = texts.flatMap((path) =>
      readFileSync(join(root, path), 'utf8')
        .split('\n')
        .flatMap((line, i) => (against.test(line) ? [`${path}:${i + 1}: ${line.trim().slice(0, 120)}`] : [])),
    );
    expect(found).toEqual([]);
  });
});

it('would be found', () => {
  for (const text of ['don’t', 'wait...', 'above 95%, or', 'at 3ms', 'a\u200bb'])
    expect(
      conventions.filter(({ against }) => against.test(text)),
      text,
    ).toHaveLength(1);
});
