import { type MidiData, parseMidi } from 'midi-file';
import type { PadNote } from '../core/onsets/note-hearing.ts';

export type MidiFault =
  | { readonly code: 'midi-damaged'; readonly facts: { readonly reason: string } }
  | { readonly code: 'midi-too-large'; readonly facts: { readonly bytes: number; readonly most: number } }
  | { readonly code: 'midi-sequences'; readonly facts: Readonly<Record<string, never>> }
  | { readonly code: 'midi-no-notes'; readonly facts: Readonly<Record<string, never>> }
  | { readonly code: 'midi-too-long'; readonly facts: { readonly seconds: number; readonly most: number } };

interface MidiNotes {
  readonly notes: readonly PadNote[];
  /** Keys that sent notes, the one with most notes first. */
  readonly keys: readonly number[];
  /** s, to the end of the longest track. */
  readonly duration: number;
}

type MidiOutcome = ({ readonly ok: true } & MidiNotes) | { readonly ok: false; readonly fault: MidiFault };

/** Two hours at ten strokes a second take 0.6 MB; our judgement of what pads send beside. */
const mostBytes = 2 * 1024 * 1024;
const mostSeconds = 24 * 3600;
/** µs a beat where a file doesn't say: 120 BPM (Standard MIDI Files 1.0). */
const usualBeat = 500_000;

/**
 * The notes of a Standard MIDI File of format 0 or 1 in order of time: every note-on with a velocity, timed by the
 * file's tempo map or its SMPTE frames. Never throws for what a file may hold.
 *
 * @example midiNotes(bytes) // { ok: true, notes: [{ time: 0.5, velocity: 96, key: 38, step: 0.00104 }, …], keys: [38], duration: 12 }
 */
export function midiNotes(bytes: Uint8Array): MidiOutcome {
  const failed = (fault: MidiFault): MidiOutcome => ({ ok: false, fault });
  if (bytes.length > mostBytes)
    return failed({ code: 'midi-too-large', facts: { bytes: bytes.length, most: mostBytes } });
  let file: MidiData;
  try {
    file = parseMidi(bytes);
  } catch (error) {
    return failed({
      code: 'midi-damaged',
      facts: { reason: error instanceof Error ? error.message : String(error) },
    });
  }
  if (endMissing(bytes) || file.tracks.length < file.header.numTracks)
    return failed({ code: 'midi-damaged', facts: { reason: 'its end is missing' } });
  if (file.header.format === 2) return failed({ code: 'midi-sequences', facts: {} });
  const clock = clockOf(file);
  if (clock === null) return failed({ code: 'midi-damaged', facts: { reason: 'no division of time' } });
  if (file.tracks.some((track) => track.some(({ deltaTime }) => deltaTime < 0)))
    return failed({ code: 'midi-damaged', facts: { reason: 'times that run backwards' } });

  const found: PadNote[] = [];
  let duration = 0;
  for (const track of file.tracks) {
    const timeOf = clock();
    let tick = 0;
    for (const event of track) {
      tick += event.deltaTime;
      if (event.type === 'noteOn' && event.velocity > 0)
        found.push({ ...timeOf(tick), velocity: event.velocity, key: event.noteNumber });
    }
    duration = Math.max(duration, timeOf(tick).time);
  }
  if (found.length === 0) return failed({ code: 'midi-no-notes', facts: {} });
  if (found.some(({ velocity, key }) => velocity > 127 || key > 127))
    return failed({ code: 'midi-damaged', facts: { reason: 'values out of range' } });
  if (!(duration <= mostSeconds))
    return failed({ code: 'midi-too-long', facts: { seconds: duration, most: mostSeconds } });
  return { ok: true, notes: found.toSorted((a, b) => a.time - b.time), keys: keysOf(found), duration };
}

/** Whether a chunk says that it is longer than what is left of the file. */
function endMissing(bytes: Uint8Array): boolean {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let at = 0;
  while (at + 8 <= bytes.length) at += 8 + view.getUint32(at + 4);
  return at > bytes.length || (at < bytes.length && bytes.length - at >= 4);
}

/** Time and step at a tick; asked for ticks that never decrease. */
type TrackClock = (tick: number) => { time: number; step: number };

/** A clock for each track that is read; null where the file divides its time by nothing. */
function clockOf(file: MidiData): (() => TrackClock) | null {
  const { ticksPerBeat, framesPerSecond, ticksPerFrame } = file.header;
  if (framesPerSecond !== undefined && ticksPerFrame !== undefined) {
    // 29 stands for the 30 000/1001 frames of drop-frame time code.
    const frames = framesPerSecond === 29 ? 30_000 / 1001 : framesPerSecond;
    const step = 1 / (frames * ticksPerFrame);
    return step > 0 && Number.isFinite(step) ? () => (tick) => ({ time: tick * step, step }) : null;
  }
  if (ticksPerBeat === undefined || ticksPerBeat === 0) return null;
  const changes = file.tracks
    .flatMap((track) => {
      let tick = 0;
      return track.flatMap((event) => {
        tick += event.deltaTime;
        return event.type === 'setTempo'
          ? [{ tick, step: event.microsecondsPerBeat / 1e6 / ticksPerBeat }]
          : [];
      });
    })
    .toSorted((a, b) => a.tick - b.tick);
  const map = [{ tick: 0, time: 0, step: usualBeat / 1e6 / ticksPerBeat }];
  for (const { tick, step } of changes) {
    const last = map.at(-1)!;
    map.push({ tick, step, time: last.time + (tick - last.tick) * last.step });
  }
  return () => {
    let last = 0;
    return (tick) => {
      while (last + 1 < map.length && map[last + 1]!.tick <= tick) last += 1;
      const at = map[last]!;
      return { time: at.time + (tick - at.tick) * at.step, step: at.step };
    };
  };
}

function keysOf(found: readonly PadNote[]): number[] {
  const counts = new Map<number, number>();
  for (const { key } of found) counts.set(key, (counts.get(key) ?? 0) + 1);
  return [...counts].toSorted((a, b) => b[1] - a[1]).map(([key]) => key);
}
