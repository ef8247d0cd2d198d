import { describe, expect, it } from 'vitest';
import { renderTake } from '../../../fixtures/generator/render-take.ts';
import { alignTake } from '../../../src/core/alignment/align-take.ts';
import { layOut } from '../../../src/core/exercise/lay-out.ts';
import { apartFromOthers } from '../../../src/core/grading/company.ts';
import { hearStrokes } from '../../../src/core/onsets/hear-strokes.ts';
import { findingSentence } from '../../../src/core/result/sentences.ts';
import { findMeasure } from '../../../src/core/scoring/find-measure.ts';
import { memorySource } from '../../bench/bench-take.ts';
import { type CheckTake, checkTakeSpec, reportTakes, tuningTakes } from '../../bench/check-takes.ts';
import { companyTake } from '../../bench/company-takes.ts';
import { found, gradeSamples } from '../recording-check/grade-samples.ts';

const named = (name: string): CheckTake =>
  [...tuningTakes, ...reportTakes].find((take) => take.name === name)!;

/** Takes laid as if every stroke were the player's, and with others told apart. */
function laid(samples: Float32Array, sampleRate: number, sheet: Parameters<typeof layOut>[0]) {
  const strokes = hearStrokes(memorySource(samples, sampleRate)).sounds.filter(
    ({ sound }) => sound === 'pad',
  );
  const question = { slots: layOut(sheet), sheet, strokes, click: null };
  const asOne = alignTake(question);
  return { asOne, apart: apartFromOthers(question, asOne) };
}

describe('apartFromOthers', () => {
  it('lays a take on its sheet while somebody else practises in the room', () => {
    const { sheet, sampleRate, together, strokes } = companyTake(named('rim, phone'), named('rubber pad'), {
      seed: 7,
      tempo: 1.1,
      underDb: 18,
    });
    const { asOne, apart } = laid(together, sampleRate, sheet);
    expect(asOne.matches.length).toBeLessThan(60);
    const right = apart.laid.matches.filter(({ slot, stroke }) => {
      const played = strokes.find((one) => one.slot === slot)!;
      return Math.abs(played.time - apart.strokes[stroke]!.time) < 0.003;
    });
    expect(right.length).toBeGreaterThanOrEqual(0.98 * strokes.length);
    expect(apart.others.length).toBeGreaterThan(40);
    const ofPlayer = apart.others.filter(({ time }) =>
      strokes.some((one) => Math.abs(one.time - time) < 0.001),
    );
    expect(ofPlayer.length).toBeLessThanOrEqual(2);
  });

  it.each(['rubber pad', 'rim, phone', 'laminate pad, bedroom', 'mesh, living room, phone', 'snare'])(
    'takes extra strokes and bounces on the same %s for the player’s own',
    (name) => {
      for (const faults of [
        { extra: 0.2, bounce: 0 },
        { extra: 0, bounce: 0.3 },
      ]) {
        const { sheet, spec } = checkTakeSpec(named(name), 33);
        const { samples, sampleRate } = renderTake({ ...spec, player: { ...spec.player, ...faults } });
        const { asOne, apart } = laid(samples, sampleRate, sheet);
        expect(apart.others).toEqual([]);
        expect(apart.laid).toBe(asOne);
      }
    },
  );
});

describe('a take in company', () => {
  const { sheet, sampleRate, alone, together } = companyTake(named('rim, phone'), named('pillow, laptop'), {
    seed: 9,
    tempo: 1.08,
    underDb: 20,
  });
  const [single, both] = [gradeSamples(alone, sampleRate, sheet), gradeSamples(together, sampleRate, sheet)];

  it('is told of, and its counts are not, for they may be the other’s', () => {
    const finding = found(both, 'others-heard')!;
    expect(finding.spoils).toContain('extra');
    expect(finding.spoils).not.toContain('timing-spread');
    expect(findingSentence(finding)).toMatch(/Somebody else .* were left out/);
    expect(findMeasure(both.measures, 'extra', {})!.outcome.state).toBe('not-measurable');
    expect(found(single, 'others-heard')).toBeUndefined();
  });

  it('has the spread of the player alone', () => {
    const [was, is] = [single, both].map(
      (result) => findMeasure(result.measures, 'timing-spread', {})!.outcome,
    );
    if (was!.state !== 'measured' || is!.state !== 'measured') throw new Error('not measured');
    expect(is!.value).toBeGreaterThan(was!.low);
    expect(is!.value).toBeLessThan(was!.high);
  });

  it('tells no times while the other is as loud as the taps', () => {
    const near = companyTake(named('laminate pad, bedroom'), named('soft pad, school'), {
      seed: 9,
      tempo: 0.9,
      underDb: 12,
    });
    const finding = found(gradeSamples(near.together, near.sampleRate, near.sheet), 'others-heard')!;
    expect(finding.spoils).toContain('timing-spread');
  });
});
