import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { reasonSentences } from '../../../src/core/measures/reason-sentences.ts';

const folder = join(import.meta.dirname, '../../../src/core/measures');
const codes = new Set(
  readdirSync(folder).flatMap((file) =>
    [
      ...readFileSync(join(folder, file), 'utf8').matchAll(/not(?:Measurable|Applicable)\(\s*'([a-z-]+)'/g),
    ].map((match) => match[1]!),
  ),
);

describe('reasonSentences', () => {
  it('has a sentence for every reason that a measure gives, and none besides', () => {
    expect(codes.size).toBeGreaterThan(8);
    expect([...codes].sort()).toEqual(Object.keys(reasonSentences).sort());
  });
  it('fills the facts in', () => {
    const facts = { strokes: 12, needed: 24, accents: 4, taps: 8, spread: 1.234, error: 0.9, unit: 'ms' };
    for (const [code, sentence] of Object.entries(reasonSentences)) {
      expect(sentence(facts), code).not.toMatch(/NaN|undefined|\?/);
    }
    expect(reasonSentences['found-too-coarsely']!(facts)).toContain('0.9 ms');
  });
});
