import { renderTake } from '../../fixtures/generator/render-take.ts';
import type { TakeSpec } from '../../fixtures/generator/take-spec.ts';
import type { TruthStroke } from '../../fixtures/generator/take-truth.ts';
import { attacksOf } from '../../src/core/onsets/attack-search.ts';
import { findMasked } from '../../src/core/onsets/masked-strokes.ts';
import { mergeWaves } from '../../src/core/onsets/merge-waves.ts';
import { classifySounds } from '../../src/core/onsets/sound-classes.ts';
import type { Stroke } from '../../src/core/onsets/stroke.ts';
import { pickup } from '../../src/core/signal/pickup.ts';
import type { Source } from '../../src/core/signal/source.ts';
import { steadyLevel, withoutLevel } from '../../src/core/signal/steady-level.ts';
import { matchEvents } from '../bench/match-events.ts';
import { floatSource } from './float-source.ts';
import { timesOf } from './heard-scenario.ts';

/** Strokes heard of those played, and heard where nothing was played, within a window. */
export interface Tally {
  readonly played: number;
  readonly found: number;
  readonly invented: number;
}

/** A take without a click, as heard before and after its masked strokes were looked for. */
export interface MaskedTake {
  readonly source: Source;
  readonly played: readonly TruthStroke[];
  readonly before: readonly Stroke[];
  readonly after: readonly Stroke[];
}

/** Renders a take and hears it up to the classes of its sounds, then looks for masked strokes. */
export function maskedTake(spec: TakeSpec): MaskedTake {
  const { samples, sampleRate, truth } = renderTake(spec);
  const recording = pickup(floatSource(sampleRate, samples));
  const source = withoutLevel(recording, steadyLevel(recording));
  const before = classifySounds(source, mergeWaves(attacksOf(source).attacks));
  const played = truth.strokes.filter(({ role }) => role !== 'bounce');
  return { source, played, before, after: findMasked(source, before) };
}

/** Counts pads against what was played, one to one within `window` s; takes may be pooled with `pooledTally`. */
export function tally(played: readonly TruthStroke[], sounds: readonly Stroke[], window = 0.01): Tally {
  const pads = sounds.filter(({ sound }) => sound === 'pad');
  const found = matchEvents(timesOf(played), timesOf(pads), window).length;
  return { played: played.length, found, invented: pads.length - found };
}

export function pooledTally(tallies: readonly Tally[]): Tally & { readonly f: number } {
  const sum = (value: (one: Tally) => number) => tallies.reduce((total, one) => total + value(one), 0);
  const [played, found, invented] = [sum((t) => t.played), sum((t) => t.found), sum((t) => t.invented)];
  return { played, found, invented, f: (2 * found) / (played + found + invented) };
}
