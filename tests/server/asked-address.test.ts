import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { askedAddress } from '../../src/server/asked-address.ts';

describe('askedAddress', () => {
  it('reads a path without its query', () => {
    expect(askedAddress('/assets/a%20b.js?x')).toBe('/assets/a b.js');
    expect(askedAddress('/')).toBe('/');
  });

  it('never gives a step upwards, a backslash or a zero', () => {
    const part = fc.constantFrom(
      '..',
      '%2e',
      '.',
      '/',
      '%2f',
      '\\',
      '%5c',
      '%00',
      '%25',
      '2e',
      'a',
      '%',
      '?',
      '#',
    );
    fc.assert(
      fc.property(fc.array(part), (parts) => {
        const address = askedAddress(`/${parts.join('')}`);
        if (address !== null) expect(address).not.toMatch(/(^|\/)\.\.?(\/|$)|[\0\\%]/);
      }),
      { numRuns: 2000 },
    );
  });
});
