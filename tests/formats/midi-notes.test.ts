import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { type MidiData, type MidiEvent, writeMidi } from 'midi-file';
import { describe, expect, it } from 'vitest';
import { midiNotes } from '../../src/formats/midi-notes.ts';
import { describeOutside } from '../outside.ts';

const note = (deltaTime: number, velocity: number, noteNumber = 38): MidiEvent => ({
  deltaTime,
  channel: 9,
  type: 'noteOn',
  noteNumber,
  velocity,
});
const tempo = (deltaTime: number, microsecondsPerBeat: number): MidiEvent => ({
  deltaTime,
  meta: true,
  type: 'setTempo',
  microsecondsPerBeat,
});
const end: MidiEvent = { deltaTime: 0, meta: true, type: 'endOfTrack' };
const file = (header: Partial<MidiData['header']>, ...tracks: MidiEvent[][]) =>
  Uint8Array.from(
    writeMidi({
      header: { format: 1, numTracks: tracks.length, ...header } as MidiData['header'],
      tracks: tracks.map((track) => [...track, end]),
    }),
  );
const notesOf = (bytes: Uint8Array) => {
  const outcome = midiNotes(bytes);
  if (!outcome.ok) throw new Error(outcome.fault.code);
  return outcome;
};

describe('midiNotes', () => {
  it('times notes by the tempo map of another track, 120 BPM before it begins', () => {
    const bytes = file(
      { ticksPerBeat: 480 },
      [tempo(480, 1_000_000)],
      [note(240, 90), note(480, 64), note(480, 0)],
    );
    const { notes, duration, keys } = notesOf(bytes);
    // Half a beat at 120 BPM; then half a beat at 120 and half at 60.
    expect(notes.map(({ time }) => time)).toEqual([0.25, 1]);
    expect(notes.map(({ velocity }) => velocity)).toEqual([90, 64]);
    expect(notes[1]!.step).toBeCloseTo(1 / 480, 12);
    expect(duration).toBeCloseTo(2, 12);
    expect(keys).toEqual([38]);
  });

  it('reads SMPTE frames', () => {
    const bytes = file({ framesPerSecond: 25, ticksPerFrame: 40 }, [note(1000, 90), note(500, 80)]);
    // 25 frames of 40 ticks are a millisecond a tick (Standard MIDI Files 1.0).
    expect(notesOf(bytes).notes.map(({ time }) => time)).toEqual([1, 1.5]);
  });

  it('says what is wrong with a file, in every case without throwing', () => {
    const code = (bytes: Uint8Array) => {
      const outcome = midiNotes(bytes);
      return outcome.ok ? 'ok' : outcome.fault.code;
    };
    expect(code(file({ ticksPerBeat: 480 }, [tempo(0, 500_000)]))).toBe('midi-no-notes');
    expect(code(file({ format: 2, ticksPerBeat: 480 }, [note(0, 90)]))).toBe('midi-sequences');
    expect(code(file({ ticksPerBeat: 480 }, [note(0, 90)]).subarray(0, 20))).toBe('midi-damaged');
    expect(code(new Uint8Array())).toBe('midi-damaged');
    const endless = file({ ticksPerBeat: 1 }, [tempo(0, 0xffffff), note(0xfffffff, 90)]);
    expect(code(endless)).toBe('midi-too-long');
    const good = file({ ticksPerBeat: 480 }, [note(0, 90), note(480, 80), note(480, 70)]);
    const sane = (bytes: Uint8Array) => {
      const outcome = midiNotes(bytes);
      if (outcome.ok)
        expect(outcome.notes.every(({ time, step }) => time >= 0 && step >= 0 && Number.isFinite(time))).toBe(
          true,
        );
    };
    fc.assert(fc.property(fc.uint8Array({ maxLength: 200 }), sane), { seed: 1, numRuns: 500 });
    fc.assert(
      fc.property(fc.nat(good.length - 1), fc.nat(255), (at, value) => sane(good.with(at, value))),
      { seed: 2, numRuns: 1000 },
    );
  });
});

// Groove MIDI Dataset 1.0 (Gillick et al. 2019, CC BY 4.0): deviations from the nearest sixteenth of the file's tempo,
// worked out with another MIDI reader.
describeOutside('recorded drummers', ['groove_midi_subset/computed_expectations.json'], (outside) => {
  const folder = join(outside, 'groove_midi_subset');
  interface Group {
    readonly n: number;
    readonly mean_ms: number;
    readonly sd_ms: number;
    readonly vel_median: number;
  }
  interface Expected {
    readonly file: string;
    readonly us_per_quarter: number;
    readonly n_note_on: number;
    readonly kick?: Group;
    readonly snare?: Group;
    readonly hihat?: Group;
  }
  const { files } = JSON.parse(readFileSync(join(folder, 'computed_expectations.json'), 'utf8')) as {
    files: Expected[];
  };
  const halfToEven = (value: number) => {
    const below = Math.floor(value);
    const isHalf = Math.abs(value - below - 0.5) < 1e-6;
    return isHalf ? below + (below % 2) : Math.round(value);
  };
  const keys = { kick: [35, 36], snare: [37, 38, 40], hihat: [42, 22, 44, 46, 26] } as const;

  it.each(files)('$file', (expected) => {
    const { notes } = notesOf(new Uint8Array(readFileSync(join(folder, expected.file))));
    expect(notes).toHaveLength(expected.n_note_on);
    const grid = expected.us_per_quarter / 4e6;
    for (const name of ['kick', 'snare', 'hihat'] as const) {
      const group = expected[name];
      if (group === undefined) continue;
      const own = notes.filter(({ key }) => (keys[name] as readonly number[]).includes(key));
      expect(own, name).toHaveLength(group.n);
      const off = own.map(({ time }) => 1000 * (time - halfToEven(time / grid) * grid));
      const mean = off.reduce((sum, one) => sum + one, 0) / off.length;
      const squares = off.reduce((sum, one) => sum + (one - mean) ** 2, 0);
      expect(mean, name).toBeCloseTo(group.mean_ms, 1);
      const sds = [off.length - 1, off.length].map((n) => Math.sqrt(squares / n));
      expect(Math.min(...sds.map((sd) => Math.abs(sd - group.sd_ms))), name).toBeLessThan(0.1);
    }
  });
});
