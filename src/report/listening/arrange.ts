import type { ListeningTake } from './listening-take.ts';
import type { Arrangement, Click, Piece } from './piece.ts';
import { sameLoudness, tapsLoweredDb } from './same-loudness.ts';
import { beforeStroke, strokeCuts, takeOver } from './stroke-cuts.ts';

/** `as-played`; every stroke on its even place; or only the taps lowered. */
export type Version = 'as-played' | 'even' | 'taps-lowered';

export interface Wish {
  readonly version: Version;
  readonly halfSpeed: boolean;
  /** Part of the take that is heard, s; with `goesRound` its ends are even beats. */
  readonly from: number;
  readonly to: number;
  readonly goesRound: boolean;
}

/** Time before the start, so that a stroke that comes early isn't cut off, s. */
export const leadTime = 0.05;

/** A gap up to this long is filled with the sound before it, s; a longer one is left silent. Our judgement. */
const longestFill = 0.03;
const fadeToSilence = 0.02;
/** Less than this is rounding, s. */
const shortestGap = 1e-6;

/**
 * What is to be heard of a take: the sound cut at its strokes and each piece put where it belongs. At half speed the
 * strokes stand twice as far apart and sound as they did, so nothing is smeared. A moment t of the take is heard at
 * `leadTime` + t − `from`, at half speed at `leadTime` + 2 (t − `from`). The same part has the same length in every
 * version, so one can change from one to another while it plays.
 */
export function arrange(take: ListeningTake, wish: Wish): Arrangement {
  const { from, to, goesRound } = wish;
  const stretch = wish.halfSpeed ? 2 : 1;
  const length = stretch * (to - from) + (goesRound ? 0 : leadTime);
  const heardAt = (time: number) => leadTime + stretch * (time - from);
  const placed = placedStrokes(take, wish, heardAt);
  const pieces = placed.flatMap((piece, i) => {
    const next = placed[i + 1]?.at ?? (goesRound ? placed[0]!.at + length : length);
    return fitted(piece, next);
  });
  return { pieces, clicks: clicksOf(take, wish, heardAt), length, goesRound };
}

type Placed = Omit<Piece, 'fadeIn' | 'fadeOut'>;

/** Every stroke of the part with the sound up to the next one, and what sounds before the first. */
function placedStrokes(take: ListeningTake, wish: Wish, heardAt: (time: number) => number): Placed[] {
  const { strokes, duration } = take;
  const { from, to, goesRound, version } = wish;
  const cuts = strokeCuts(strokes.time);
  const loudness = version === 'taps-lowered' ? 1 : sameLoudness(strokes);
  const placed = cuts.flatMap(({ stroke, at }, i): Placed[] => {
    const move = strokes.moveMs[stroke]! / 1000;
    const time = strokes.time[stroke]!;
    // A stroke belongs to the beat it was meant for, also where it comes a little early.
    const belongs = goesRound ? time + move : at;
    if (belongs < from - 1e-3 || belongs >= to - 1e-3) return [];
    const lowered = version === 'taps-lowered' && strokes.tap[stroke];
    return [
      {
        from: at,
        to: cuts[i + 1]?.at ?? duration,
        at: heardAt(time + (version === 'even' ? move : 0)) - beforeStroke,
        gain: loudness * (lowered ? 10 ** (-tapsLoweredDb / 20) : 1),
      },
    ];
  });
  const ordered = placed.sort((a, b) => a.at - b.at);
  if (goesRound) return ordered;
  const lead = Math.max(0, from - leadTime);
  const firstCut = Math.min(to, ordered[0]?.from ?? to);
  if (firstCut <= lead) return ordered;
  return [{ from: lead, to: firstCut, at: leadTime - (from - lead), gain: loudness }, ...ordered];
}

/** The piece as it has to be so that the one at `next` follows it: cut off, filled up, or faded to silence. */
function fitted(piece: Placed, next: number): Piece[] {
  const length = piece.to - piece.from;
  const room = Math.max(0, next - piece.at);
  const whole = { ...piece, fadeIn: takeOver, fadeOut: takeOver };
  if (room <= length + shortestGap) return [{ ...whole, to: piece.from + room }];
  const gap = room - length;
  if (gap <= longestFill && 2 * gap < length) {
    return [whole, { ...whole, from: piece.to - gap, at: piece.at + length }];
  }
  // The fading ends where the next stroke's piece begins in the recording, or its attack would be heard.
  const end = Math.max(piece.from + takeOver, piece.to + takeOver - fadeToSilence);
  return [{ ...whole, to: end, fadeOut: Math.max(takeOver, piece.to + takeOver - end) }];
}

function clicksOf({ beats }: ListeningTake, { from, to }: Wish, heardAt: (time: number) => number): Click[] {
  return beats.from.flatMap((time, i) =>
    time < from - 1e-3 || time >= to - 1e-3
      ? []
      : [{ at: heardAt(time), strong: beats.beginsBar[i] ?? false }],
  );
}
