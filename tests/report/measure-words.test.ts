import { describe, expect, it } from 'vitest';
import { measures } from '../../src/core/measures/index.ts';
import { measureWords } from '../../src/report/measure-words.ts';

describe('measureWords', () => {
  it('has title, meaning and source of every measure', () => {
    for (const { id } of measures) {
      const { title, describes, source } = measureWords(id);
      expect([title, describes, source].every((text) => text.length > 5)).toBe(true);
    }
    expect(measureWords('missed').title).toBe('Missed strokes');
  });

  it("spells out an id that it doesn't know", () => {
    expect(measureWords('from-a-newer-version')).toEqual({
      title: 'From a newer version',
      describes: '',
      source: '',
    });
  });
});
