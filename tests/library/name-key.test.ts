import { expect, it } from 'vitest';
import { nameKey, plainName } from '../../src/library/name-key.ts';

it('names that people take for the same are the same', () => {
  expect(nameKey('  Mirelle\u00a0 K. ')).toBe('mirelle k.');
  expect(nameKey('ＭＩＲＥＬＬＥ')).toBe('mirelle');
  expect(nameKey('Zoe\u0301')).toBe(nameKey('Zo\u00e9'));
  expect(nameKey(' \t')).toBe('');
});

it('a name is one line without control characters, and not endless', () => {
  expect(plainName(' Anke\n\u0007Bo ')).toBe('Anke Bo');
  expect([...plainName('🥁'.repeat(500))]).toHaveLength(200);
});
