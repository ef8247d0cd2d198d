import { clickSound } from '../../fixtures/generator/click-sound.ts';
import { addNoise } from '../../fixtures/generator/noise.ts';
import { otherSound } from '../../fixtures/generator/other-sounds.ts';
import { seeded } from '../../fixtures/generator/random.ts';
import { strokeKinds } from '../../fixtures/generator/stroke-kinds.ts';
import { type StrokeSound, synthesiseStroke } from '../../fixtures/generator/stroke-sound.ts';
import { alignTake } from '../../src/core/alignment/align-take.ts';
import type { Alignment } from '../../src/core/alignment/alignment.ts';
import { apartFromOthers } from '../../src/core/grading/company.ts';
import { hearStrokes } from '../../src/core/onsets/hear-strokes.ts';
import { type Judgement, judge } from '../core/alignment/judge-alignment.ts';
import { type SimulatedTake, simulateTake, type TakeSpec } from '../core/alignment/simulated-take.ts';
import { memorySource } from './bench-take.ts';
import { matchEvents } from './match-events.ts';

const sampleRate = 48_000;
/** Level of a performance's strokes is a stroke's own; a peak is about this much above it. */
const peakOverLevelDb = 10;
const noiseDb = -72;
/** A heard stroke is the played one within this, s, as Böck, Krebs & Schedl (2012) match onsets. */
const window = 0.025;
const surfaces = ['rubber-pad', 'soft-pad', 'laminate-pad'] as const;

/** The sound of a performance whose every stroke is known. */
function render(take: SimulatedTake, seed: number): Float32Array {
  const random = seeded(seed);
  const clicks = (take.click?.times ?? []).filter((time) => time > 0.05);
  const last = Math.max(take.strokes.at(-1)?.time ?? 0, clicks.at(-1) ?? 0);
  const mix = new Float64Array(Math.ceil((last + 0.8) * sampleRate));
  const put = (time: number, make: (fraction: number) => StrokeSound) => {
    const whole = Math.floor(time * sampleRate);
    const sound = make(time * sampleRate - whole);
    const from = whole + sound.first;
    for (let i = Math.max(0, -from); i < sound.samples.length && from + i < mix.length; i++) {
      mix[from + i]! += sound.samples[i]!;
    }
  };
  const kind = strokeKinds[surfaces[seed % surfaces.length]!];
  const peakOf = (levelDb: number) => Math.min(-3, levelDb + peakOverLevelDb);
  const loudest = Math.max(...take.strokes.map(({ levelDb }) => levelDb));
  take.strokes.forEach(({ time, levelDb, sound }, i) => {
    const own = random.fork(`stroke ${i}`);
    if (sound === 'stick-click') {
      put(time, () => ({
        samples: otherSound('stick-click', 0, peakOf(levelDb), sampleRate, own).samples,
        first: 0,
        peakDb: 0,
      }));
      return;
    }
    const softDb = Math.max(0, loudest - levelDb);
    put(time, (fraction) =>
      synthesiseStroke(kind, {
        sampleRate,
        fraction,
        levelDb: peakOf(levelDb),
        softDb,
        tiltDb: 0,
        random: own,
      }),
    );
  });
  for (const time of clicks) {
    put(time, (fraction) => clickSound('woodblock', false, take.click!.levelDb, fraction, sampleRate));
  }
  addNoise(mix, 'white', noiseDb, sampleRate, random.fork('noise'));
  return Float32Array.from(mix);
}

export interface AlignedTake {
  readonly judgement: Judgement;
  readonly alignment: Alignment;
  /** Strokes of the pad played, and those of them heard. */
  readonly played: number;
  readonly heard: number;
}

/** The same take, begun so much later in the recording. */
function later(take: SimulatedTake, seconds: number): SimulatedTake {
  const strokes = take.strokes.map((stroke) => ({ ...stroke, time: stroke.time + seconds }));
  const click = take.click && { ...take.click, times: take.click.times.map((time) => time + seconds) };
  return { ...take, strokes, click };
}

/**
 * Plays a performance, renders it, hears it and lays what was heard on the sheet. The recording begins `leadSeconds` before
 * the performance does; a click sounds from at least four beats before its first stroke.
 */
export function alignRendered(spec: TakeSpec, leadSeconds = 0): AlignedTake {
  const { seed } = spec;
  const take = later(simulateTake(spec), leadSeconds);
  const { sounds, click } = hearStrokes(memorySource(render(take, seed), sampleRate));
  const pads = sounds.filter(({ sound }) => sound === 'pad');
  const question = { slots: take.slots, sheet: take.sheet, strokes: pads, click };
  const { strokes, laid: alignment } = apartFromOthers(question, alignTake(question));
  const pairs = matchEvents(
    take.strokes.map(({ time }) => time),
    strokes.map(({ time }) => time),
    window,
  );
  const truth: (SimulatedTake['truth'][number] | null)[] = strokes.map(() => null);
  const roles: SimulatedTake['roles'][number][] = strokes.map(() => 'clutter');
  for (const { reference, estimate } of pairs) {
    truth[estimate] = take.truth[reference]!;
    roles[estimate] = take.roles[reference]!;
  }
  const judgement = judge({ ...take, strokes, truth, roles }, alignment);
  const ofSlots = take.truth.filter((one) => one !== null).length;
  const heard = truth.filter((one) => one !== null).length;
  // Strokes that were played and not heard are wanted as well.
  const unheard = take.truth.filter(
    (one, i) =>
      one && take.parts[one.part]!.state === 'graded' && !pairs.some(({ reference }) => reference === i),
  ).length;
  return {
    judgement: { ...judgement, wanted: judgement.wanted + unheard },
    alignment,
    played: ofSlots,
    heard,
  };
}
