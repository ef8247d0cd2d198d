import { describe, expect, it } from 'vitest';
import { type Random, seeded } from '../../../fixtures/generator/random.ts';
import { renderTake } from '../../../fixtures/generator/render-take.ts';
import { type ScenarioName, scenario } from '../../../fixtures/generator/scenarios.ts';
import type { TakeResult } from '../../../src/core/result/take-result.ts';
import { checkTakeSpec, reportTakes } from '../../bench/check-takes.ts';
import { damages } from '../../bench/damages.ts';
import { found, gradeSamples } from './grade-samples.ts';

const clean = scenario('clean-120', 8);
const take = renderTake(clean.spec);
const spoiltCodes = ({ measures }: TakeResult) => [
  ...new Set(
    measures.flatMap(({ outcome }) =>
      outcome.state === 'not-measurable' && outcome.reason.code.startsWith('spoiled-')
        ? [outcome.reason.code]
        : [],
    ),
  ),
];

describe('the check of a recording in which nothing is wrong', () => {
  it.each<ScenarioName>([
    'phone',
    'messenger',
    'room-hall',
    'tom',
    'recorded-high-tom',
    'click-in-room',
    'busy-room',
    'snare-long-wires',
    'burst-60-ms',
    'taps-34-db-under',
    'rate-16000',
  ])('refuses nothing in a sound recording: %s', (name) => {
    const { sheet, spec } = scenario(name, 21);
    const { samples, sampleRate } = renderTake(spec);
    const result = gradeSamples(samples, sampleRate, sheet);
    expect(result.grading.state).toBe('graded');
    expect(result.recording.check!.filter(({ spoils }) => spoils.length > 0)).toEqual([]);
    expect(spoiltCodes(result)).toEqual([]);
  });

  it.each<[string, (random: Random, rate: number) => Float32Array]>([
    [
      'somebody rustles on the way to the pad',
      (random, rate) => {
        let loud = 0;
        return Float32Array.from({ length: rate }, (_, i) => {
          if (i % 2000 === 0) loud = random.uniform();
          return 0.004 * loud * random.normal();
        });
      },
    ],
    ['a program put silence', (_, rate) => new Float32Array(1.6 * rate)],
  ])('refuses nothing where before and behind the playing %s', (_, made) => {
    const { sampleRate, truth } = take;
    const [from, to] = [truth.strokes[0]!.time - 0.4, truth.strokes.at(-1)!.time + 0.4];
    const samples = take.samples.subarray(Math.round(from * sampleRate), Math.round(to * sampleRate));
    const edge = made(seeded('edge'), sampleRate);
    for (const parts of [
      [edge, samples],
      [samples, edge],
    ] as const) {
      const joined = new Float32Array(samples.length + edge.length);
      joined.set(parts[0]);
      joined.set(parts[1], parts[0].length);
      const findings = gradeSamples(joined, sampleRate, clean.sheet).recording.check!;
      expect(findings.filter(({ spoils }) => spoils.length > 0)).toEqual([]);
    }
  });

  it.each([
    ['high tom, bare room', null],
    ['long wires', '-8 dBFS'],
    ['soft pad, school', '-3 dBFS'],
  ] as const)('refuses nothing for how a room or a loud click dies away: %s, click %s', (name, label) => {
    const { sheet, spec } = checkTakeSpec(reportTakes.find((one) => one.name === name)!, 42);
    const { strengths } = damages.find((one) => one.name === 'click in the microphone')!;
    const change = strengths.find((one) => one.label === label)?.spec?.(spec) ?? {};
    const { samples, sampleRate } = renderTake({ ...spec, ...change });
    const result = gradeSamples(samples, sampleRate, sheet);
    expect(result.grading.state).toBe('graded');
    expect(result.recording.check!.filter(({ spoils }) => spoils.length > 0)).toEqual([]);
    expect(found(result, 'narrow-band')).toBeUndefined();
    expect(found(result, 'dc-offset')).toBeUndefined();
  });
});
