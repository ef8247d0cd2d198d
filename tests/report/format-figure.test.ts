import { describe, expect, it } from 'vitest';
import { formatFigure, formatRange, scopeWords } from '../../src/report/format-figure.ts';

describe('formatFigure and formatRange', () => {
  it('round by unit, with a true minus and the unit once', () => {
    expect(formatFigure(-3.14, 'ms')).toBe('\u22123.1\u00a0ms');
    expect(formatFigure(-0.02, 'dB')).toBe('0.0\u00a0dB');
    expect(formatFigure(0.985, 'probability')).toBe('98.5\u00a0in\u00a0100');
    expect(formatRange(-6, 1.84, 'ms')).toBe('\u22126.0 to 1.8\u00a0ms');
  });
});

describe('scopeWords', () => {
  it('names the part of the take', () => {
    expect(scopeWords({})).toBe('whole take');
    expect(scopeWords({ hand: 'L', line: 1 })).toBe('line 2, left hand');
    expect(scopeWords({ place: 'after' })).toBe('after an accent');
    expect(scopeWords({ partial: 3, repeat: 0 })).toBe('repeat 1, partial 3');
  });
});
