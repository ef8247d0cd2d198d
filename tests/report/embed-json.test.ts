import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { embedJson } from '../../src/report/embed-json.ts';

describe('embedJson', () => {
  it('hides every <', () => {
    expect(embedJson({ a: '</script>' })).toBe('{"a":"\\u003c/script>"}');
  });

  it('comes back as it was, without a < on the way', () => {
    fc.assert(
      fc.property(fc.dictionary(fc.string(), fc.string({ unit: 'binary' })), (value) => {
        const text = embedJson(value);
        expect(text).not.toContain('<');
        expect(JSON.parse(text)).toEqual(value);
      }),
    );
  });

  it('rounds numbers to four decimals', () => {
    expect(embedJson([1.23456789, -0.1, 3])).toBe('[1.2346,-0.1,3]');
  });
});
