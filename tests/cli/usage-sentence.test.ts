import { describe, expect, it } from 'vitest';
import { usageSentence } from '../../src/cli/usage-sentence.ts';

describe('usageSentence', () => {
  it('gives the example of its comment', () => {
    expect(usageSentence("error: unknown option '--bmp'\n(Did you mean --bpm?)\n", 'evenhand grade')).toBe(
      "Unknown option '--bmp'. Did you mean --bpm? `evenhand grade --help` shows what there is.\n",
    );
  });

  it("leaves a command's own words as they are", () => {
    expect(usageSentence('No exercise fits.\n', 'evenhand exercises')).toBe('No exercise fits.\n');
  });
});
