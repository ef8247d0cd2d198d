import { describe, expect, it } from 'vitest';
import { scoreBars } from '../../src/report/parts/score-bars.ts';

describe('scoreBars', () => {
  const drawn = scoreBars(
    [
      { score: 100, weak: false, words: 'first' },
      { score: 50, weak: true, words: 'second & third' },
      { score: null, weak: false, words: 'fourth' },
    ],
    20,
  );

  it('draws a better score taller, all on one ground', () => {
    const bars = [...drawn.matchAll(/<rect x="(\d+)" y="(\d+)" width="12" height="(\d+)" class="(\w+)"/g)];
    expect(bars.map(([, x, , height, look]) => [Number(x), Number(height), look])).toEqual([
      [2, 28, 'held'],
      [22, 14, 'weak'],
      [42, 3, 'open'],
    ]);
    expect(new Set(bars.map(([, , y, height]) => Number(y) + Number(height)))).toEqual(new Set([40]));
  });

  it('crosses a weak one, over it, and says each in words', () => {
    expect(drawn.match(/class="cross"/g)).toHaveLength(1);
    expect(drawn).toContain('<path d="M25 17l6 6m0 -6l-6 6" class="cross"/>');
    expect(drawn).toContain('aria-label="first; second &amp; third; fourth"');
  });
});
