import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { seeded } from '../../../../fixtures/generator/random.ts';
import { type ScoreAtTempo, tempoOfBreak } from '../../../../src/core/scoring/breaking/tempo-of-break.ts';

const at = (bpm: number, score: number, half = 5): ScoreAtTempo => ({
  bpm,
  score,
  low: Math.max(0, score - half),
  high: Math.min(100, score + half),
});

describe('tempoOfBreak', () => {
  it('lies where the scores cross "nearly there", between the last sound and the first broken tempo', () => {
    const clear = [at(80, 90), at(90, 85), at(100, 80), at(110, 40), at(120, 20)];
    const found = tempoOfBreak(clear);
    expect(found).toEqual({ state: 'broke', bpm: expect.closeTo(105, 9), low: 100, high: 110 });
  });

  it('says that nothing broke, or that all was broken, with an open end', () => {
    const sound = [80, 90, 100, 110].map((bpm) => at(bpm, 90));
    expect(tempoOfBreak(sound)).toEqual({ state: 'held', bpm: 110, low: 110, high: null });
    const broken = [80, 90, 100, 110].map((bpm) => at(bpm, 20));
    expect(tempoOfBreak(broken)).toEqual({ state: 'from-the-start', bpm: 80, low: null, high: 80 });
    // The fastest line is doubtful: the break may lie before it as well as beyond.
    const doubtful = [at(80, 90), at(90, 90), at(100, 85), at(110, 64, 12)];
    expect(tempoOfBreak(doubtful)).toEqual({ state: 'held', bpm: 110, low: 100, high: null });
  });

  it('takes one weak line in between for chance when what follows is sound', () => {
    const slip = [at(80, 90), at(90, 57), at(100, 90), at(110, 85), at(120, 20)];
    const { bpm, low, high } = tempoOfBreak(slip);
    expect([bpm > 110, low, high]).toEqual([true, 110, 120]);
  });

  it('holds its estimate, and a better score nowhere makes the break come sooner', () => {
    const scores = fc.array(fc.integer({ min: 0, max: 100 }), { minLength: 4, maxLength: 10 });
    fc.assert(
      fc.property(scores, fc.nat(), fc.integer({ min: 1, max: 30 }), (given, which, more) => {
        const points = given.map((score, i) => at(80 + 5 * i, score));
        const found = tempoOfBreak(points);
        if (found.low !== null && found.state === 'broke') expect(found.low).toBeLessThanOrEqual(found.bpm);
        if (found.high !== null && found.state === 'broke')
          expect(found.high).toBeGreaterThanOrEqual(found.bpm);
        const better = given.map((score, i) =>
          at(80 + 5 * i, i === which % given.length ? Math.min(100, score + more) : score, 5),
        );
        const place = ({ state, bpm }: ReturnType<typeof tempoOfBreak>) =>
          state === 'held' ? 1e6 : state === 'from-the-start' ? 0 : bpm;
        const even = (list: readonly ScoreAtTempo[]) =>
          list.map((one) => ({ ...one, low: one.score - 5, high: one.score + 5 }));
        expect(place(tempoOfBreak(even(better)))).toBeGreaterThanOrEqual(
          place(tempoOfBreak(even(points))) - 1e-9,
        );
      }),
    );
  });

  // Truth: a falling curve that crosses 60 at a known tempo, normal errors. Steps are coarse, so that most intervals
  // hold more than they must; where the curve is so flat that nearly every line is in doubt, they hold 93 to 97 %.
  it.each([
    [4, 0.3, 8, 0.925],
    [6, 0.3, 8, 0.92],
    [8, 0.3, 3, 0.95],
    [8, 1, 8, 0.955],
    [12, 1, 8, 0.955],
    [8, 3, 3, 0.98],
  ])('covers the truth with %i lines, slope %f, error %f', (lines, slope, se, least) => {
    const random = seeded(`break ${lines} ${slope} ${se}`);
    const takes = 1500;
    let covered = 0;
    for (let take = 0; take < takes; take++) {
      const tempos = Array.from({ length: lines }, (_, i) => 80 + 5 * i);
      const truth = random.between(80 + 0.5 * lines, 80 + 4.5 * (lines - 1));
      const points = tempos.map((bpm) => {
        const curve = 100 / (1 + Math.exp(((bpm - truth) * slope) / 20 + Math.log(40 / 60)));
        return at(bpm, Math.min(100, Math.max(0, random.normal(curve, se))), 1.96 * se);
      });
      const { low, high } = tempoOfBreak(points);
      if ((low ?? 0) <= truth && truth <= (high ?? 1000)) covered += 1;
    }
    expect(covered / takes).toBeGreaterThan(least);
  });
});
