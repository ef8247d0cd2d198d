import { describe, expect, it } from 'vitest';
import { addHum } from '../../../fixtures/generator/damage/add-hum.ts';
import { clip } from '../../../fixtures/generator/damage/clip.ts';
import { type DropOutKind, dropOut } from '../../../fixtures/generator/damage/drop-out.ts';
import { narrowBand } from '../../../fixtures/generator/damage/narrow-band.ts';
import { suppressNoise } from '../../../fixtures/generator/damage/suppress-noise.ts';
import { throughChain } from '../../../fixtures/generator/damage/through-chain.ts';
import { addNoise } from '../../../fixtures/generator/noise.ts';
import { type Random, seeded } from '../../../fixtures/generator/random.ts';
import { readSheet } from '../../../fixtures/generator/read-sheet.ts';
import { renderTake } from '../../../fixtures/generator/render-take.ts';
import { type ScenarioName, scenario } from '../../../fixtures/generator/scenarios.ts';
import type { Sheet } from '../../../src/core/exercise/sheet.ts';
import { gradeTake } from '../../../src/core/grade-take.ts';
import { recordingChecks } from '../../../src/core/recording-check/check-recording.ts';
import { findingSentence, sentence } from '../../../src/core/result/sentences.ts';
import type { RecordingFinding, TakeResult } from '../../../src/core/result/take-result.ts';
import type { Source } from '../../../src/core/signal/source.ts';
import { memorySource } from '../../bench/bench-take.ts';
import { checkTakeSpec, reportTakes, tuningTakes } from '../../bench/check-takes.ts';
import { damages } from '../../bench/damages.ts';

const grade = (samples: Float32Array, sampleRate: number, sheet: Sheet): TakeResult =>
  gradeTake(memorySource(samples, sampleRate), sheet, { name: 'take.wav' });
const spoiltCodes = ({ measures }: TakeResult) => [
  ...new Set(
    measures.flatMap(({ outcome }) =>
      outcome.state === 'not-measurable' && outcome.reason.code.startsWith('spoiled-')
        ? [outcome.reason.code]
        : [],
    ),
  ),
];
const found = (result: TakeResult, code: string): RecordingFinding | undefined =>
  result.recording.check!.find((finding) => finding.code === code);

const clean = scenario('clean-120', 8);
const take = renderTake(clean.spec);
const damaged = (spoil: (samples: Float32Array, sampleRate: number) => Float32Array): TakeResult =>
  grade(spoil(take.samples, take.sampleRate), take.sampleRate, clean.sheet);
const noisy = (levelDb: number) => (samples: Float32Array, sampleRate: number) => {
  const out = Float64Array.from(samples);
  addNoise(out, 'pink', levelDb, sampleRate, seeded('noise'));
  return Float32Array.from(out);
};
const chain = (parts: Parameters<typeof throughChain>[2]) => (samples: Float32Array, sampleRate: number) =>
  throughChain(samples, sampleRate, parts, seeded('chain'));
const dropped = (kind: DropOutKind) => (samples: Float32Array, sampleRate: number) =>
  dropOut(samples, sampleRate, { kind, ms: 40, aMinute: 60 }, seeded('drop')).samples;

describe('the check of a recording', () => {
  /** With rates in `reports/recording-check.md`; strengths here are well beyond where they are found. */
  it.each([
    ['clipped', 'accent-spread', (samples: Float32Array) => clip(samples, 8)],
    ['clipped', 'accent-spread', (samples: Float32Array) => clip(samples, 8, 0.6)],
    ['dc-offset', null, (samples: Float32Array) => samples.map((x) => x + 0.03)],
    [
      'hum',
      null,
      (samples: Float32Array, rate: number) => addHum(samples, rate, { hz: 50, levelDb: -45, harmonics: 6 }),
    ],
    [
      'hum',
      null,
      (samples: Float32Array, rate: number) => addHum(samples, rate, { hz: 60, levelDb: -45, harmonics: 0 }),
    ],
    ['drop-outs', null, dropped('silence')],
    ['drop-outs', null, dropped('repeated')],
    ['drop-outs', 'timing-spread', dropped('lost')],
    [
      'narrow-band',
      null,
      (samples: Float32Array, rate: number) => narrowBand(samples, rate, { lowHz: 300, highHz: 3400 }),
    ],
    ['noisy', null, noisy(-41)],
    ['taps-near-noise', null, noisy(-41)],
    [
      'gain-control',
      'accent-to-tap-ratio',
      chain({ gainControl: { thresholdDb: -34, ratio: 4, attackMs: 4, releaseMs: 260, makeUpDb: 4 } }),
    ],
    [
      'gated',
      'missed',
      chain({ gate: { thresholdDb: -26, floorDb: -45, attackMs: 1.5, holdMs: 40, releaseMs: 60 } }),
    ],
    [
      'spectral-holes',
      'tap-spread',
      (samples: Float32Array, rate: number) =>
        suppressNoise(samples, rate, { depthDb: 30, marginDb: 18, openMs: 60 }),
    ],
  ] as const)('finds: %s, spoiling %s', (code, spoils, spoil) => {
    const result = damaged(spoil as (samples: Float32Array, sampleRate: number) => Float32Array);
    const finding = found(result, code);
    expect(finding, JSON.stringify(result.recording.check)).toBeDefined();
    expect(findingSentence(finding!)).toMatch(/\. /);
    if (spoils === null) return;
    expect(finding!.spoils).toContain(spoils);
    if (result.grading.state !== 'graded') return;
    const whole = result.measures.find(({ id, scope }) => id === spoils && Object.keys(scope).length === 0);
    expect(whole!.outcome).toMatchObject({ state: 'not-measurable', reason: { code: `spoiled-${code}` } });
    expect(sentence({ code: `spoiled-${code}`, facts: finding!.facts })).toBe(sentence(finding!));
  });

  it('finds a limiter by how accents die away where a drum rings over the hiss', () => {
    const { sheet, spec } = checkTakeSpec(tuningTakes.find(({ name }) => name === 'snare')!, 13);
    const { samples, sampleRate } = renderTake(spec);
    const limiter = { thresholdDb: -24, ratio: 20, attackMs: 0.5, releaseMs: 80, makeUpDb: 4 };
    const finding = found(
      grade(chain({ gainControl: limiter })(samples, sampleRate), sampleRate, sheet),
      'limited',
    );
    expect(finding!.spoils).toContain('accent-to-tap-ratio');
    expect(findingSentence(finding!)).toMatch(/limiter/);
    expect(found(grade(samples, sampleRate, sheet), 'limited')).toBeUndefined();
  });

  it('finds a gate that closes fast amid ringing, that lets a floor through for a while, or that taps do not open', () => {
    const gated = (name: string, thresholdDb: number) => {
      const { sheet, spec } = checkTakeSpec(tuningTakes.find((one) => one.name === name)!, 13);
      const { samples, sampleRate } = renderTake(spec);
      expect(found(grade(samples, sampleRate, sheet), 'gated')).toBeUndefined();
      const gate = { thresholdDb, floorDb: -25, attackMs: 1, holdMs: 30, releaseMs: 6 };
      return found(grade(chain({ gate })(samples, sampleRate), sampleRate, sheet), 'gated');
    };
    expect(gated('snare', -28)!.spoils).toContain('tap-spread');
    expect(gated('mesh, living room, phone', -44)!.spoils).toContain('tap-spread');
    expect(gated('rubber pad', -28)!.spoils).toContain('tap-spread');
  });

  it('takes accents that ring longer than taps, as rim shots do, for no limiter', () => {
    const random = seeded('rim shots');
    const rate = 48_000;
    const { sheet } = readSheet('tempo: 100\n>RLR >LRL ; times: 12');
    const samples = Float32Array.from({ length: 16 * rate }, () => 0.0003 * random.normal());
    for (let i = 0; i < 72; i++) {
      const accent = i % 3 === 0;
      const level = 10 ** ((accent ? -8 : -22) / 20 + 0.075 * random.normal());
      const [start, ring] = [Math.round((1 + i / 5) * rate), accent ? 0.09 : 0.03];
      for (let k = 0; k < 0.4 * rate; k++) {
        const t = k / rate;
        const body = Math.sin(2 * Math.PI * 260 * t) * Math.exp(-t / ring);
        samples[start + k]! += level * (body + 0.6 * random.normal() * Math.exp(-t / 0.004));
      }
    }
    const result = grade(samples, rate, sheet);
    expect(result.strokes.role.filter((role) => role === 'matched')).toHaveLength(72);
    expect(found(result, 'limited')).toBeUndefined();
  });

  it('tells where sound was lost', () => {
    const { samples, at } = dropOut(
      take.samples,
      take.sampleRate,
      { kind: 'silence', ms: 60, aMinute: 1 },
      seeded('one'),
    );
    const finding = found(grade(samples, take.sampleRate, clean.sheet), 'drop-outs');
    expect(finding!.facts.at).toBeCloseTo(at[0]!, 1);
  });

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
    const result = grade(samples, sampleRate, sheet);
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
      const findings = grade(joined, sampleRate, clean.sheet).recording.check!;
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
    const result = grade(samples, sampleRate, sheet);
    expect(result.grading.state).toBe('graded');
    expect(result.recording.check!.filter(({ spoils }) => spoils.length > 0)).toEqual([]);
    expect(found(result, 'narrow-band')).toBeUndefined();
    expect(found(result, 'dc-offset')).toBeUndefined();
  });

  it('looks at every channel', () => {
    const { samples, sampleRate } = take;
    const cut = clip(samples, 10, 0.5);
    const stereo: Source = {
      ...memorySource(samples, sampleRate),
      channels: 2,
      read: (channel, from, to) => memorySource(channel === 0 ? samples : cut, sampleRate).read(0, from, to),
    };
    expect(found(gradeTake(stereo, clean.sheet), 'clipped')).toBeDefined();
  });

  it.each([
    ['silence', new Float32Array(20_000)],
    ['one sample', Float32Array.of(0.5)],
    ['a square wave at full scale', Float32Array.from({ length: 48_000 }, (_, i) => (i % 100 < 50 ? 1 : -1))],
  ])('stands %s', (_, samples) => {
    const result = grade(samples, 48_000, clean.sheet);
    expect(result.grading.state).toBe('not-gradable');
    for (const finding of result.recording.check!)
      expect(findingSentence(finding)).not.toMatch(/NaN|Infinity|undefined/);
  });

  it('has one finding a check', () => {
    expect(new Set(recordingChecks).size).toBe(recordingChecks.length);
  });
});
