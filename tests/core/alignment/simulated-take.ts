import { layOut } from '../../../src/core/exercise/lay-out.ts';
import type { Sheet } from '../../../src/core/exercise/sheet.ts';
import type { Slot } from '../../../src/core/exercise/slot.ts';
import type { HeardClick, Stroke } from '../../../src/core/onsets/stroke.ts';
import { padStrokes } from './made-sheet.ts';
import { seeded } from './seeded.ts';

/** A part of the sheet as it was played: slots from one to another, and what came before it. */
export interface Part {
  readonly from: number;
  readonly to: number;
  /** On the beat that was due; the partial between dropped and the gap closed; one more stroke first; s of pause. */
  readonly after: 'in-time' | 'left-out' | 'put-in' | number;
  readonly state: 'graded' | 'abandoned' | 'surplus';
  /** Strokes of talk or noodling in the pause before. */
  readonly clutter?: number;
}

export interface TakeSpec {
  readonly sheet: Sheet;
  readonly seed: number;
  /** The sheet's parts as played, given its main slots; by default the whole sheet once. */
  readonly parts?: (mains: readonly Slot[]) => readonly Part[];
  /** Tempo played against the one asked (or against 110 BPM where none is). */
  readonly tempo?: number;
  /** SD of a stroke's place, as a share of the partial. */
  readonly jitter?: number;
  /** Change of tempo from start to end, as a share; amplitude of a slow wave in the placement, in partials. */
  readonly drift?: number;
  readonly wander?: number;
  readonly missed?: number;
  readonly extra?: number;
  readonly bounced?: number;
  readonly accentsLost?: number;
  readonly ratioDb?: number;
  readonly spreadDb?: number;
  readonly before?: 'nothing' | 'noodling' | 'talk' | 'counted-on-pad' | 'sticks';
  readonly afterwards?: 'nothing' | 'noodling' | 'sticks-down';
  readonly click?: boolean;
}

export interface SimulatedTake {
  readonly slots: readonly Slot[];
  readonly sheet: Sheet;
  readonly strokes: readonly Stroke[];
  readonly click: HeardClick | null;
  /** For each stroke its slot and part, or null for what belongs to no slot. */
  readonly truth: readonly (null | { readonly slot: number; readonly part: number })[];
  readonly roles: readonly ('played' | 'grace' | 'extra' | 'bounce' | 'clutter')[];
  readonly parts: readonly Part[];
}

interface Event {
  time: number;
  level: number;
  sound: Stroke['sound'];
  truth: null | { slot: number; part: number };
  role: SimulatedTake['roles'][number];
}

/** Plays a sheet badly or well, without sound: only the strokes' times and levels, with the truth beside them. */
export const simulateTake = (spec: TakeSpec): SimulatedTake => {
  const { sheet, seed, tempo = 1, jitter = 0.05, drift = 0, wander = 0, missed = 0, extra = 0 } = spec;
  const { bounced = 0, accentsLost = 0, ratioDb = 14, spreadDb = 1.8 } = spec;
  const random = seeded(seed);
  const slots = layOut(sheet);
  const mains = slots.filter((slot) => !slot.grace);
  const parts = spec.parts?.(mains) ?? [
    { from: 0, to: mains.length - 1, after: 0, state: 'graded' as const },
  ];
  const events: Event[] = [];
  const clutterAt = (at: number): void => {
    events.push({ time: at, level: random.between(-45, -12), sound: 'pad', truth: null, role: 'clutter' });
  };
  const tapDb = random.between(-38, -26);
  const accentDb = tapDb + ratioDb;
  const periodOf = (index: number): number => 60 / (sheet.lines[index]!.bpm ?? 110) / tempo;
  let time = random.between(0.3, 1);
  const clutter = (count: number, least: number, most: number): void => {
    for (let i = 0; i < count; i++) {
      time += random.between(least, most);
      clutterAt(time);
    }
  };
  const first = periodOf(mains[parts[0]!.from]!.line);
  if (spec.before === 'noodling') {
    clutter(random.whole(6, 25), 0.09, 0.7);
    time += random.between(1, 3);
  } else if (spec.before === 'talk') {
    for (let word = random.whole(5, 20); word > 0; word--) {
      clutter(random.whole(1, 4), 0.06, 0.3);
      time += random.between(0.2, 0.9);
    }
    time += random.between(0.7, 2);
  } else if (spec.before === 'counted-on-pad' || spec.before === 'sticks') {
    const sound = spec.before === 'sticks' ? 'stick-click' : 'pad';
    for (let i = 0; i < 4; i++) {
      events.push({ time, level: accentDb + random.normal(), sound, truth: null, role: 'clutter' });
      time += first * (1 + 0.02 * random.normal());
    }
  }
  const [start, beats] = [time, mains.at(-1)!.beatTime];
  const phase = random.between(0, 6);
  let done = 0;
  parts.forEach((part, p) => {
    const firstSlot = mains[part.from]!;
    const before = parts[p - 1] && mains[parts[p - 1]!.to]!;
    if (typeof part.after === 'number') {
      for (let i = 0; i < (part.clutter ?? 0); i++)
        clutterAt(time + (part.after * (i + random.uniform())) / part.clutter!);
      time += part.after;
    } else if (before) {
      const period = periodOf(before.line);
      if (part.after === 'left-out') time += (1 / before.divisions) * period;
      else if (part.after === 'put-in') {
        time += period / before.divisions;
        events.push({
          time: time + (jitter * random.normal() * period) / before.divisions,
          level: tapDb + spreadDb * random.normal(),
          sound: 'pad',
          truth: null,
          role: 'extra',
        });
        time += period / before.divisions;
      } else {
        const barEnd = Math.floor(before.position + 1e-9) + 1;
        time += (barEnd - before.position) * period;
        time += (firstSlot.position - Math.floor(firstSlot.position)) * periodOf(firstSlot.line);
      }
    }
    for (let m = part.from; m <= part.to; m++) {
      const slot = mains[m]!;
      const previous = mains[m - 1];
      if (m > part.from && previous) {
        const curve = 1 + drift * Math.min(1, done / beats);
        const step = slot.beatTime - previous.beatTime;
        time += step * periodOf(previous.line) * curve;
        done += step;
      }
      const partial = periodOf(slot.line) / Math.max(3, slot.divisions);
      const wave = wander * partial * Math.sin(phase + (2 * Math.PI * done) / 14);
      const onset = time + jitter * partial * random.normal() + wave;
      if (random.uniform() < missed) continue;
      const loud = slot.accent && random.uniform() >= accentsLost;
      const level = (loud ? accentDb : tapDb) + spreadDb * random.normal();
      events.push({ time: onset, level, sound: 'pad', truth: { slot: slot.index, part: p }, role: 'played' });
      let ahead = 0;
      for (let g = slot.index - 1; slots[g]?.grace; g--) {
        ahead += random.between(0.02, 0.035);
        events.push({
          time: onset - ahead,
          level: tapDb - 3,
          sound: 'pad',
          truth: { slot: g, part: p },
          role: 'grace',
        });
      }
      if (random.uniform() < bounced) {
        const after = Math.min(random.between(0.02, 0.06), 0.4 * partial);
        events.push({
          time: onset + after,
          level: level - random.between(6, 15),
          sound: 'pad',
          truth: null,
          role: 'bounce',
        });
      }
      if (random.uniform() < extra) {
        events.push({
          time: onset + partial * random.between(0.35, 0.65),
          level: tapDb,
          sound: 'pad',
          truth: null,
          role: 'extra',
        });
      }
    }
  });
  time += random.between(0.8, 2.5);
  if (spec.afterwards === 'noodling') clutter(random.whole(5, 20), 0.1, 0.6);
  if (spec.afterwards === 'sticks-down') clutter(random.whole(2, 7), 0.04, 0.2);
  events.sort((a, b) => a.time - b.time);
  const strokes = padStrokes(
    events.map((event) => event.time),
    events.map((event) => event.level),
  ).map((stroke, i) => ({ ...stroke, sound: events[i]!.sound }));
  const clickFrom = start - 4 * first - random.whole(0, 8) * first + 0.02 * random.normal();
  const clicks = spec.click
    ? Array.from({ length: Math.ceil((time - clickFrom) / first) }, (_, i) => clickFrom + i * first)
    : [];
  return {
    slots,
    sheet,
    strokes,
    click: spec.click ? { times: clicks, period: first, levelDb: -20 } : null,
    truth: events.map((event) => event.truth),
    roles: events.map((event) => event.role),
    parts,
  };
};
