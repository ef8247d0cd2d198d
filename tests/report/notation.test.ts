import { describe, expect, it } from 'vitest';
import { notation } from '../../src/report/parts/notation.ts';
import { smallTake } from '../charts/small-take.ts';

describe('notation', () => {
  it('draws a picture a beat with accents and hands, and says the same in words', () => {
    const html = notation(smallTake(2), 0)!;
    expect(html.match(/<svg/g)).toHaveLength(2);
    expect(html.match(/class="accent"/g)).toHaveLength(2);
    expect([...html.matchAll(/class="hand[^"]*">([RL])/g)].map((m) => m[1]).join('')).toBe('RLRLRL');
    expect(html).toContain(
      'aria-label="beat 1: accented right left right; beat 2: accented left right left"',
    );
  });

  it('draws rests, grace notes and bar lines', () => {
    const result = smallTake(6);
    const grace = result.slots.grace.map((_, i) => i === 3);
    const partial = result.slots.partial.map((p, i) => (i === 3 ? 2 : p));
    const html = notation({ ...result, slots: { ...result.slots, grace, partial } }, 0)!;
    expect(html).toContain('class="grace">l</text>');
    expect(html.match(/class="rest"/g)).toHaveLength(1);
    expect(html.match(/class="bar"/g)).toHaveLength(1);
    expect(html).toContain('beat 2: rest right left');
  });

  it('counts the beats beyond those that are drawn', () => {
    expect(notation(smallTake(32), 0)).not.toContain('more beat');
    expect(notation(smallTake(33), 0)).toContain('<p class="note">And 1 more beat.</p>');
    expect(notation(smallTake(34), 0)).toContain('<p class="note">And 2 more beats.</p>');
  });

  it('has nothing for a line without slots', () => {
    expect(notation(smallTake(2), 1)).toBeNull();
  });
});
