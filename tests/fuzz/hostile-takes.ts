import { type Random, seeded } from '../../fixtures/generator/random.ts';
import { parseSheet } from '../../src/core/exercise/parse-sheet.ts';
import type { Sheet } from '../../src/core/exercise/sheet.ts';
import { gradeTake } from '../../src/core/grade-take.ts';
import { validateTakeResult } from '../../src/core/result/validate-take-result.ts';
import { lowestSampleRate } from '../../src/core/signal/lowest-sample-rate.ts';
import type { Source } from '../../src/core/signal/source.ts';

/** A sample of one channel, from its time (s), its index and a source of chance. */
type Sound = (time: number, index: number, random: Random) => number;

const hits = (perSecond: number): Sound => {
  const level = (index: number) => (index % 3 === 0 ? 0.8 : 0.15);
  return (time, _, random) => {
    const since = (time * perSecond) % 1;
    return (
      level(Math.floor(time * perSecond)) * Math.exp((-40 * since) / perSecond) * (2 * random.uniform() - 1)
    );
  };
};

/** Sounds that no player makes, some of which a broken device does. */
export const hostileSounds: Readonly<Record<string, Sound>> = {
  silence: () => 0,
  'the smallest number there is': () => 5e-324,
  'a constant': () => 0.5,
  'full scale, one side': () => 1,
  'a full-scale square wave': (time) => (Math.floor(time * 2000) % 2 === 0 ? 1 : -1),
  'every sample turned over': (_, index) => (index % 2 === 0 ? 1 : -1),
  'a full-scale sine': (time) => Math.sin(2 * Math.PI * 440 * time),
  'white noise': (_, __, random) => 2 * random.uniform() - 1,
  'noise of one bit': (_, __, random) => (random.uniform() < 0.5 ? 0 : 1 / 32768),
  'single full samples': (_, index) => (index % 997 === 0 ? 1 : 0),
  'one full sample': (_, index) => (index === 1000 ? 1 : 0),
  'samples far over full scale': (time, index, random) => 1e6 * hits(5)(time, index, random),
  'samples near the largest float': (_, index) => (index % 50 === 0 ? 3e38 : 0),
  'samples that are no numbers': (time, index, random) =>
    index % 100 === 7 ? Number.NaN : hits(5)(time, index, random),
  'nothing but no numbers': () => Number.NaN,
  'infinite samples': (time, index, random) =>
    index % 1000 === 7 ? (index % 2 === 0 ? 1 : -1) * Number.POSITIVE_INFINITY : hits(5)(time, index, random),
  'strokes on a constant': (time, index, random) => 0.4 + 0.5 * hits(6)(time, index, random),
  'ten thousand strokes a minute': hits(10_000 / 60),
  'a stroke every two seconds': hits(0.5),
  'strokes as asked': hits(6),
  'a sweep': (time) => 0.9 * Math.sin(2 * Math.PI * 300 * time * time),
  'gated strokes': (time, index, random) => (time % 0.2 < 0.02 ? hits(5)(time, index, random) : 0),
};

export const hostileSheets: Readonly<Record<string, string>> = {
  triplets: 'tempo: 120\n>RLR >LRL ; times: 4',
  'one stroke': '>R',
  'no tempo': '>RLR >LRL ; times: 100',
  'twelfths at the fastest': 'tempo: 300\nRLRLRLRLRLRL ; times: 20',
  'graces and rests': 'tempo: 60\nllR - rL-R >RzL --- ; times: 3',
  'many lines': `tempo: 90\n${'>R>L>R >LRL ; lead: changes ; rest: 4\n'.repeat(40)}`,
  'one in a bar': 'tempo: 40\nR--- ---- ---- ---- ; times: 8',
};

export interface HostileTake {
  readonly name: string;
  readonly source: Source;
  readonly sheet: Sheet;
}

/** Hz: what files may have, and what a program that calls the analysis by itself might. */
const rates = [1, 4000, 8000, 11_025, 22050, 44100, 48000, 96000, 192_000, 384_000];
const channelCounts = [1, 2, 8];
const mostSamples = 200_000;

/** A take of one sound; `frames` is cut to what a fuzzer can afford. Channels differ in level and, every third, in sign. */
export function hostileTake(
  sound: string,
  sheet: string,
  { sampleRate = 48000, channels = 1, frames = 96_000, seed = 1 } = {},
): HostileTake {
  const parsed = parseSheet(hostileSheets[sheet]!);
  if (!parsed.ok) throw new Error(`${sheet}: ${parsed.faults[0]?.code}`);
  const random = seeded(seed);
  const samples = Float32Array.from({ length: frames }, (_, index) =>
    hostileSounds[sound]!(index / sampleRate, index, random),
  );
  const read = (channel: number, from: number, to: number) => {
    const out = new Float32Array(Math.max(0, to - from));
    const first = Math.max(0, from);
    if (first < to) out.set(samples.subarray(first, Math.max(first, to)), first - from);
    const gain = (channel % 3 === 2 ? -1 : 1) / (1 + channel / 4);
    return channel === 0 ? out : out.map((sample) => gain * sample);
  };
  const name = `${sound}, ${sheet}, ${sampleRate} Hz, ${channels} channels, ${frames} frames, seed ${seed}`;
  return { name, source: { sampleRate, channels, length: frames, read }, sheet: parsed.sheet };
}

/** Takes of sounds, sheets, rates, channels and lengths by chance; the same seed gives the same ones. */
export function* hostileTakes(seed: number, count: number): Generator<HostileTake> {
  const random = seeded(seed);
  const of = <T>(list: readonly T[]): T => list[Math.floor(random.uniform() * list.length)]!;
  for (let i = 0; i < count; i++) {
    const channels = of(channelCounts);
    // Lengths of every size, from one sample on.
    const frames = Math.max(1, Math.floor((mostSamples / channels) ** random.uniform()));
    yield hostileTake(of(Object.keys(hostileSounds)), of(Object.keys(hostileSheets)), {
      ...{ sampleRate: of(rates), channels, frames, seed: seed + i },
    });
  }
}

/**
 * Grades a take and holds the result, as it goes into a file, against its schema; a rate too low to find strokes at is
 * refused. Throws what is wrong.
 */
export function gradedWhole({ source, sheet }: HostileTake): 'graded' | 'not-gradable' | 'refused' {
  try {
    const result = gradeTake(source, sheet, { name: 'hostile.wav' });
    if (source.sampleRate < lowestSampleRate) throw new Error('it was graded at a rate too low to be heard');
    return validateTakeResult(JSON.parse(JSON.stringify(result))).grading.state;
  } catch (error) {
    if (source.sampleRate < lowestSampleRate && error instanceof RangeError && /at least/.test(error.message))
      return 'refused';
    throw error;
  }
}
