import { layOut } from '../exercise/lay-out.ts';
import type { Sheet } from '../exercise/sheet.ts';
import type { Slot } from '../exercise/slot.ts';

/** A tap stands 12 dB under an accent: a contrast to aim at. Our judgement. */
const accentLevel = 0.7;
const tapLevel = accentLevel * 10 ** (-12 / 20);

/** s before its stroke at which the nearest grace note sounds, and between two of them: within the common 10 to 60 ms. */
const graceAhead = 0.03;

/** Strokes a second of a buzz, and how long it lasts. These and what follows: our judgement, to be told by ear. */
const buzz = { rate: 24, seconds: 0.12 };

/** Hz of the two hands, a little apart so that they are told by ear. */
const pitch = { R: 330, L: 294 } as const;

/** s until a stroke has fallen to 1/e, and how long it is rendered. */
const decay = 0.018;
const length = 0.12;

interface Hit {
  readonly time: number;
  readonly hand: Slot['hand'];
  readonly level: number;
}

/**
 * A sheet played evenly by a synthesised pad, accents and taps 12 dB apart, to hear an exercise before playing it. One
 * channel at full scale ±1; `firstBeat` s from the start of the track to the sheet's first beat. Lines without a tempo,
 * and what comes after them, stay silent.
 *
 * @example renderStrokes(sheet, plan.firstBeat, plan.duration, 48_000)
 */
export function renderStrokes(
  sheet: Sheet,
  firstBeat: number,
  duration: number,
  sampleRate: number,
): Float32Array {
  const track = new Float32Array(Math.ceil(duration * sampleRate));
  const sounds = { R: hit(pitch.R, sampleRate), L: hit(pitch.L, sampleRate) };
  for (const { time, hand, level } of hits(layOut(sheet))) {
    const at = Math.round((firstBeat + time) * sampleRate);
    sounds[hand].forEach((sample, i) => {
      if (at + i >= 0 && at + i < track.length) track[at + i]! += sample * level;
    });
  }
  return track;
}

function hits(slots: readonly Slot[]): Hit[] {
  return slots.flatMap((slot, i): Hit[] => {
    const { time, hand } = slot;
    if (time === null) return [];
    if (slot.grace) {
      let before = 1;
      while (slots[i + before]?.grace) before += 1;
      return [{ time: time - before * graceAhead, hand, level: tapLevel / 2 }];
    }
    const level = slot.accent ? accentLevel : tapLevel;
    if (!slot.buzz) return [{ time, hand, level }];
    const count = Math.round(buzz.rate * buzz.seconds);
    return Array.from({ length: count }, (_, n) => ({
      time: time + n / buzz.rate,
      hand,
      level: level * 0.8 ** n,
    }));
  });
}

/** A short thump with a bright edge; its first sample is its onset. */
function hit(hz: number, sampleRate: number): Float32Array {
  return Float32Array.from({ length: Math.ceil(length * sampleRate) }, (_, i) => {
    const t = i / sampleRate;
    const body = Math.cos(2 * Math.PI * hz * t) * Math.exp(-t / decay);
    const edge = Math.cos(2 * Math.PI * hz * 7.3 * t) * Math.exp(-t / 0.002);
    return 0.7 * body + 0.3 * edge;
  });
}
