import { practisedPlayer } from '../../fixtures/generator/player.ts';
import { readSheet } from '../../fixtures/generator/read-sheet.ts';
import { plainTake, type TakeSpec } from '../../fixtures/generator/take-spec.ts';
import { median } from '../../src/core/stats/median.ts';
import { quantile } from '../../src/core/stats/quantile.ts';
import { benchTake, dryWindow } from './bench-take.ts';
import { throughCodec } from './codec.ts';
import type { LevelCandidate } from './level-candidates.ts';
import type { RecordingChain } from './recording-chains.ts';

/** How one way of measuring does in one chain, dB; the chain's constant part is taken off. */
export interface LevelErrors {
  /** 95 % of strokes lie within this of their dry level. */
  readonly spreadDb: number;
  /** Error of the accent-to-tap ratio. */
  readonly ratioDb: number;
  /** Taps right after an accent against other taps: error of the difference. */
  readonly afterAccentDb: number;
  /** Accent-to-tap ratio by this definition, dry, less the ratio of dry peaks. */
  readonly definitionDb: number;
}

interface MeasuredStroke {
  readonly error: number;
  readonly dry: number;
  readonly peak: number;
  readonly place: 'accent' | 'after' | 'tap';
}

const bpm = 126;
const lines = '>RLR >LRL R>LR L>RL RL>R LR>L >R>LR >L>RL ; times: 2';
/** Attack of the previous stroke that is no tail yet, s. */
const attackSeconds = 0.008;
const player = { ...practisedPlayer, accentDb: -9, tapDb: -25 };

/** Errors of every candidate, measured at the true onsets, over takes with these seeds. */
export function levelErrors(
  { change, codec }: RecordingChain,
  seeds: readonly number[],
  candidates: readonly LevelCandidate[],
  ffmpeg: string | undefined,
): LevelErrors[] {
  const { slots } = readSheet(`tempo: ${bpm}\n${lines}`);
  const strokes = candidates.map((): MeasuredStroke[] => []);
  for (const seed of seeds) {
    const spec: TakeSpec = { ...plainTake, player, bpm, slots, seed, ...change };
    const dry: number[][] = [];
    const take = benchTake('', '', spec, (samples, rate, onset) => {
      const levels = candidates.map(({ level }) => level({ samples, rate, onset, pastFrom: 0 }));
      dry.push(levels);
      return levels[0]!;
    });
    const { sampleRate, truth } = take;
    const samples = codec && ffmpeg ? throughCodec(ffmpeg, take.samples, sampleRate, codec) : take.samples;
    const before = Math.ceil(dryWindow.before * sampleRate);
    const after = Math.ceil(dryWindow.after * sampleRate);
    truth.strokes.forEach(({ time, accent, peakDb }, i) => {
      const from = Math.floor(time * sampleRate) - before;
      const previous = truth.strokes[i - 1];
      const pastFrom = previous ? Math.max(0, (previous.time + attackSeconds) * sampleRate - from) : 0;
      const heard = samples.slice(from, from + before + after);
      const place = accent ? 'accent' : previous?.accent ? 'after' : 'tap';
      candidates.forEach(({ level }, c) => {
        const measured = level({
          samples: heard,
          rate: sampleRate,
          onset: time * sampleRate - from,
          pastFrom,
        });
        strokes[c]!.push({ error: measured - dry[i]![c]!, dry: dry[i]![c]!, peak: peakDb, place });
      });
    });
  }
  return strokes.map(summed);
}

function summed(strokes: readonly MeasuredStroke[]): LevelErrors {
  const of = (value: (stroke: MeasuredStroke) => number, places: readonly string[]) =>
    median(strokes.filter(({ place }) => places.includes(place)).map(value));
  const error = (stroke: MeasuredStroke) => stroke.error;
  const constant = median(strokes.map(error));
  const defined = ({ dry, peak }: MeasuredStroke) => dry - peak;
  return {
    spreadDb: quantile(
      strokes.map((stroke) => Math.abs(stroke.error - constant)),
      0.95,
    ),
    ratioDb: of(error, ['accent']) - of(error, ['after', 'tap']),
    afterAccentDb: of(error, ['after']) - of(error, ['tap']),
    definitionDb: of(defined, ['accent']) - of(defined, ['after', 'tap']),
  };
}
