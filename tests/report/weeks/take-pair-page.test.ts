import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { plannedTakes } from '../../../fixtures/studio/planned-takes.ts';
import { playedTake } from '../../../fixtures/studio/played-take.ts';
import { students } from '../../../fixtures/studio/students.ts';
import type { Conditions } from '../../../src/core/progress/conditions.ts';
import { takeAgainstTake } from '../../../src/core/progress/take-against-take.ts';
import type { TakeResult } from '../../../src/core/result/take-result.ts';
import { likeMoment, pairSound, pairVolumes } from '../../../src/report/weeks/pair-sound.ts';
import { pairPictures, takePairPage } from '../../../src/report/weeks/take-pair-page.ts';

const sha256 = (text: string) => createHash('sha256').update(text, 'utf8').digest('base64');
const dario = students.find(({ name }) => name.startsWith('Dario'))!;
const planned = plannedTakes(dario, '2026-06-01').filter(({ week }) => week.bpm === 104);
const graded = async (i: number): Promise<TakeResult> =>
  (await playedTake({ ...planned[i]!, sounding: false })).result;
const [first, second] = [await graded(0), await graded(1)];
const conditions: Conditions = {
  exercise: 'a b c',
  bpm: 104,
  technique: 'whip',
  pad: 'gum pad',
  sticks: 'oak',
  device: 'laptop',
};
const side = (result: TakeResult, exercise = 'Accents') => ({
  result,
  player: 'Dario',
  played: '2026-05-01 15:30',
  exercise,
  conditions: [],
  sound: 'data:audio/mpeg;base64,AAAA',
});
const page = (change: Partial<Conditions> = {}, exercise = 'Accents') => {
  const compared = takeAgainstTake(
    { result: first, conditions },
    { result: second, conditions: { ...conditions, ...change } },
  );
  const pair = { takes: [side(first, exercise), side(second, exercise)] as const, compared };
  return {
    html: takePairPage(pair, { fontFaces: '', sha256, script: 'draw()', images: {} }),
    ids: pairPictures(pair).map(({ id }) => id),
  };
};

describe('two takes on one page', () => {
  it('stand over each other in pictures, can be heard, and get no verdict', () => {
    const { html, ids } = page();
    expect(ids).toEqual(['places-pair', 'lines-pair', 'levels-pair']);
    expect(html).toContain('without a verdict');
    expect(html).toContain('like is held against like');
    expect(html.match(/<audio /g)).toHaveLength(2);
    expect(html).toContain('id="pair-sound"');
  });

  it('compare no levels on another pad, and nothing at another tempo, and say so', () => {
    const pad = page({ pad: 'mesh pad' });
    expect(pad.ids).toEqual(['places-pair', 'lines-pair']);
    expect(pad.html).toContain('they differ in pad');
    expect(pad.html).toContain('not compared');
    const tempo = page({ bpm: 120 });
    expect(tempo.ids).toEqual([]);
    expect(tempo.html).toContain('they differ in tempo');
    expect(page({ pad: null }).html).toContain('Not noted with both takes: pad');
  });

  it.each(['</script><script>alert(1)</script>', '"><img src=x onerror=alert(1)>', '\u202Egnp.exe'])(
    'show a title from outside as text: %s',
    (hostile) => {
      const { html } = page({}, hostile);
      expect(html).not.toContain('<script>alert');
      expect(html).not.toContain('<img src=x');
      expect(html).not.toContain('\u202E');
    },
  );
});

describe('listening from the same place', () => {
  it('goes to the same beat of the other take, and back', () => {
    const sound = pairSound(first, second);
    expect(sound.beats[0].length).toBe(48);
    for (const time of [0.2, 3.3, 20.1, 60]) {
      const there = likeMoment(sound, 0, time);
      expect(likeMoment(sound, 1, there)).toBeCloseTo(time, 6);
    }
    expect(
      likeMoment(
        {
          beats: [
            [1, 2],
            [5, 7],
          ],
        },
        0,
        1.5,
      ),
    ).toBe(6);
    expect(likeMoment({ beats: [[], []] }, 0, 1.5)).toBe(1.5);
  });

  it("turns the louder take down to the other's loudness", () => {
    const [a, b] = pairVolumes({ loudnessDb: [-20, -26] });
    expect(20 * Math.log10(a)).toBeCloseTo(-6, 10);
    expect(b).toBe(1);
  });
});
