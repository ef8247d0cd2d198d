import { describe, expect, it } from 'vitest';
import { comparedFigures } from '../../../src/core/progress/compared-figures.ts';
import { changeText } from '../../../src/core/progress/progress-words.ts';

const figure = (id: string) => comparedFigures.find((one) => one.id === id)!;

describe('changeText', () => {
  it.each([
    ['timing-spread', 0.9, '−10 %'],
    ['timing-spread', 1.104, '+10 %'],
    ['timing-spread', 1.001, '0 %'],
    ['accent-to-tap-ratio', 1.25, '+1.3 dB'],
    ['missed-and-extra', 0.01, '0.0 %'],
    ['separation', -0.02, '−2.0 %'],
  ])('says a change of %s by %s as %s', (id, value, text) => {
    expect(changeText(value, figure(id))).toBe(text);
  });
});
