import { type MidiEvent, writeMidi } from 'midi-file';
import type { TakeResult } from '../core/result/take-result.ts';
import { extent } from '../core/stats/extent.ts';

/** Ticks a beat: 480 of common practice; 2, 3, 4, 5, 6 and 8 equal parts all fall on whole ticks. */
export const ticksPerBeat = 480;

/** Keys of the General MIDI percussion map (channel 10): side stick for the left hand, acoustic snare for the right. */
const keys = { R: 38, L: 37 } as const;

/** Decibels below the take's loudest graded stroke that a step of velocity stands for (our judgement). */
const dbPerStep = 0.4;

/** What the keys of a take tell of its hands, as a text of the file: ASCII, which every program reads alike. */
export const handsSaid: Readonly<Record<TakeResult['hands'], string>> = {
  'as-written': 'Hands: as written in the exercise, not heard. Key 38 stands for right, 37 for left.',
  'confirmed-by-sound':
    'Hands: as written in the exercise, confirmed by the sound. Key 38 stands for right, 37 for left.',
  'not-told': 'Hands: not told by this take. Keys 38 and 37 only follow what is written, right and left.',
};

/** A stroke has no length; so short a note stands for it, ticks. */
const noteTicks = 20;

/** The slowest tempo that a file can hold, µs a beat: 24 bits. */
const slowest = 0xffffff;

interface Timed {
  readonly tick: number;
  readonly event: MidiEvent;
}

/**
 * Velocity of a level: 127 for the loudest graded stroke and one less for every 0.4 dB below it, never under 1. A range
 * of 50 dB fits; how an instrument answers to velocity isn't standardised.
 *
 * @example velocityOf(-16, -12) // 117
 */
export function velocityOf(levelDb: number, loudestDb: number): number {
  return Math.min(127, Math.max(1, Math.round(127 - (loudestDb - levelDb) / dbPerStep)));
}

/**
 * The graded strokes of a take as a Standard MIDI File (format 1, 480 ticks a beat): a tempo track whose tempo is each
 * run's own, and a track of the strokes as they were played, right and left on different keys, with a text that says
 * how far the hands are known. The file begins with the recording, so that its times are the recording's, to half a
 * tick. Null for a take without graded strokes.
 *
 * @example takeMidi(result) // Uint8Array beginning with 'MThd'
 */
export function takeMidi(result: TakeResult): Uint8Array | null {
  const { strokes, segments } = result;
  const graded = strokes.time.flatMap((_, i) => (strokes.role[i] === 'matched' ? [i] : []));
  const runs = segments.filter(({ state, bpm }) => state === 'graded' && bpm > 0);
  if (graded.length === 0 || runs.length === 0) return null;
  const tempos = tempoMap(runs);
  const tickOf = (time: number) => {
    const at = tempos.findLast((tempo) => tempo.from <= time) ?? tempos[0]!;
    return Math.round(at.tick + ((time - at.from) * 1e6 * ticksPerBeat) / at.perBeat);
  };
  const { most: loudest } = extent(graded.map((i) => strokes.levelDb[i]!));
  const notes = graded.flatMap((i): Timed[] => {
    const slot = strokes.slot[i];
    const hand = strokes.hand[i] ?? (slot == null ? 'R' : result.slots.hand[slot]!);
    const [tick, noteNumber] = [Math.max(0, tickOf(strokes.time[i]!)), keys[hand]];
    const on = { deltaTime: 0, channel: 9, noteNumber, velocity: velocityOf(strokes.levelDb[i]!, loudest) };
    return [
      { tick, event: { ...on, type: 'noteOn' } },
      { tick: tick + noteTicks, event: { ...on, type: 'noteOff', velocity: 0 } },
    ];
  });
  const tempoTrack = tempos.map(
    ({ tick, perBeat }): Timed => ({
      tick,
      event: { deltaTime: 0, meta: true, type: 'setTempo', microsecondsPerBeat: perBeat },
    }),
  );
  const said: Timed = {
    tick: 0,
    event: { deltaTime: 0, meta: true, type: 'text', text: handsSaid[result.hands] },
  };
  return midiFile([track([said, ...tempoTrack]), track(notes)]);
}

const [headerBytes, chunkHead] = [14, 8];
/** The package's writer copies all it has at every event, so that long tracks are written in parts of so many. */
const eventsAtOnce = 256;

function midiFile(tracks: readonly MidiEvent[][]): Uint8Array {
  const header = { format: 1, numTracks: tracks.length, ticksPerBeat } as const;
  const written = (events: readonly MidiEvent[][]) => writeMidi({ header, tracks: [...events] });
  const parts = [written(tracks.map(() => [])).slice(0, headerBytes)];
  for (const events of tracks) {
    const body: number[][] = [];
    for (let from = 0; from < events.length; from += eventsAtOnce)
      body.push(written([events.slice(from, from + eventsAtOnce)]).slice(headerBytes + chunkHead));
    const length = body.reduce((sum, { length }) => sum + length, 0);
    parts.push(
      [...new TextEncoder().encode('MTrk'), ...[24, 16, 8, 0].map((shift) => (length >>> shift) & 0xff)],
      ...body,
    );
  }
  return Uint8Array.from(parts.flat());
}

/** Where each tempo begins: the first run's from the start of the recording, each other's at its first stroke. */
function tempoMap(runs: TakeResult['segments']) {
  const map: { from: number; tick: number; perBeat: number }[] = [];
  for (const { from, bpm } of runs) {
    const perBeat = Math.min(slowest, Math.round(6e7 / bpm));
    const before = map.at(-1);
    if (before === undefined) map.push({ from: 0, tick: 0, perBeat });
    else {
      const tick = before.tick + Math.round(((from - before.from) * 1e6 * ticksPerBeat) / before.perBeat);
      // The tempo begins on a whole tick; the time of that tick, not the stroke's, carries on.
      const exact = before.from + ((tick - before.tick) * before.perBeat) / 1e6 / ticksPerBeat;
      map.push({ from: exact, tick, perBeat });
    }
  }
  return map;
}

function track(events: readonly Timed[]): MidiEvent[] {
  const rank = ({ event }: Timed) => (event.type === 'noteOff' ? 0 : 1);
  const sorted = events.toSorted((a, b) => a.tick - b.tick || rank(a) - rank(b));
  const end: MidiEvent = { deltaTime: 0, meta: true, type: 'endOfTrack' };
  return [
    ...sorted.map(({ tick, event }, i) => ({ ...event, deltaTime: tick - (sorted[i - 1]?.tick ?? 0) })),
    end,
  ];
}
