import { describe, expect, it } from 'vitest';
import { hostileFiles } from './hostile-files.ts';
import { parsers } from './parsers.ts';

/** `tests/bench/fuzz-parsers.ts` measures their time and memory. */
describe.each(parsers)('$name made to harm', ({ name, read }) => {
  const own = hostileFiles.filter(({ parser }) => parser === name);
  it.each(own)('$name', async ({ bytes, harmless = false }) => {
    expect(await read(await bytes())).toBe(harmless);
  });
});

it('every one has its parser', () => {
  const names = parsers.map(({ name }) => name);
  expect(hostileFiles.filter(({ parser }) => !names.includes(parser))).toEqual([]);
  expect(names.filter((name) => !hostileFiles.some(({ parser }) => parser === name))).toEqual([]);
});
