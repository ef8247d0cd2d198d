import fc from 'fast-check';
import { expect, it } from 'vitest';
import { parseJson } from '../../../src/core/result/parse-json.ts';

it('is what JSON.parse makes of it', () => {
  fc.assert(
    fc.property(fc.json({ maxDepth: 20 }), (text) => {
      expect(parseJson(text)).toEqual(JSON.parse(text));
    }),
  );
  expect(parseJson('{"a":"[[\\"[{"}')).toEqual({ a: '[["[{' });
});

it('refuses what no document is', () => {
  const nested = (count: number) => '['.repeat(count) + ']'.repeat(count);
  expect(parseJson(nested(100))).toHaveLength(1);
  expect(() => parseJson(nested(101))).toThrow(SyntaxError);
  expect(() => parseJson(`[${'{"a":'.repeat(100_000)}`)).toThrow('in each other');
  expect(() => parseJson(`"${'['.repeat(1000)}`)).toThrow(SyntaxError);
});
