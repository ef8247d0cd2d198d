import { expect, it } from 'vitest';
import { wholeChildren } from '../../../src/page/shell/whole-figures.ts';

const space = '\u00a0';

it('wholeChildren keeps figure and unit together, in one text or in two', () => {
  expect(wholeChildren('at 92 BPM')).toBe(`at 92${space}BPM`);
  expect(wholeChildren([92, ' BPM'])).toEqual([92, `${space}BPM`]);
  expect(wholeChildren(['from ', '104', '–', '106', ' BPM'])).toEqual([
    'from ',
    '104',
    '–',
    '106',
    `${space}BPM`,
  ]);
  expect(wholeChildren(['at ', ['92', ' BPM'], null])).toEqual(['at ', ['92', `${space}BPM`], null]);
  const element = { type: 'b' };
  expect(wholeChildren([element, ' BPM'])).toEqual([element, ' BPM']);
  expect(wholeChildren(undefined)).toBeUndefined();
});
