import MIDIFile from 'midifile';
import { describe, expect, it } from 'vitest';
import { handsSaid, takeMidi, ticksPerBeat, velocityOf } from '../../src/formats/take-midi.ts';
import { smallTake } from '../charts/small-take.ts';
import { exampleResult } from '../support/example-result.ts';
import { onPlainStack } from '../support/on-plain-stack.ts';

/** The file as an independent reader sees it: note-on events with seconds from the start. */
function read(bytes: Uint8Array) {
  const file = new MIDIFile(bytes.buffer as ArrayBuffer);
  const ons = file
    .getMidiEvents()
    .filter((event) => event.subtype === 0x9)
    .map(({ playTime, param1, param2, channel }) => ({
      time: playTime / 1000,
      key: param1,
      velocity: param2,
      channel,
    }));
  return { ticks: file.header.getTicksPerBeat(), format: file.header.getFormat(), ons };
}

describe('takeMidi, read back with an independent package', () => {
  const result = smallTake(40);
  const { ticks, format, ons } = read(takeMidi(result)!);

  it('has whole ticks for thirds of a beat', () => {
    expect([format, ticks]).toEqual([1, ticksPerBeat]);
    for (const parts of [2, 3, 4, 5, 6, 8]) expect(ticksPerBeat % parts).toBe(0);
  });

  it('holds every graded stroke at its time in the recording, to a tick', () => {
    expect(ons).toHaveLength(result.strokes.time.length);
    const tick = 60 / 100 / ticksPerBeat;
    for (const [i, on] of ons.entries())
      expect(Math.abs(on.time - result.strokes.time[i]!)).toBeLessThan(tick / 2 + 1e-6);
  });

  it('holds as many of a long take', () => {
    const long = smallTake(1000);
    const { time } = long.strokes;
    const heard = read(takeMidi(long)!).ons;
    expect(heard).toHaveLength(time.length);
    for (const [i, on] of heard.entries()) expect(on.time).toBeCloseTo(time[i]!, 2);
  });

  it('holds more strokes than a call takes arguments on a stack of ordinary size', () => {
    const { stdout, stderr } = onPlainStack(`
      import { smallTake } from '${new URL('../charts/small-take.ts', import.meta.url)}';
      import { takeMidi } from '${new URL('../../src/formats/take-midi.ts', import.meta.url)}';
      console.log(takeMidi(smallTake(45_000)).length);`);
    expect([Number(stdout) > 45_000 * 3 * 8, stderr]).toEqual([true, '']);
  });

  it('holds hands as keys and levels as velocities', () => {
    expect(ons.slice(0, 4).map(({ key }) => key)).toEqual([38, 37, 38, 37]);
    // Levels −12, −24, −22 dB: 12 and 10 dB below are 30 and 25 steps of 0.4 dB.
    expect(ons.slice(0, 3).map(({ velocity }) => velocity)).toEqual([127, 97, 102]);
    expect(new Set(ons.map(({ channel }) => channel))).toEqual(new Set([9]));
  });

  it('keeps the times across a change of tempo', () => {
    const [run] = result.segments;
    const half = result.strokes.time[60]!;
    const segments = [
      { ...run!, to: half },
      { ...run!, from: half, bpm: 87.3 },
    ];
    const heard = read(takeMidi({ ...result, segments })!).ons;
    for (const [i, on] of heard.entries())
      expect(Math.abs(on.time - result.strokes.time[i]!)).toBeLessThan(0.001);
  });

  it.each(['as-written', 'confirmed-by-sound', 'not-told'] as const)('says of the hands: %s', (hands) => {
    const file = new MIDIFile(takeMidi({ ...result, hands })!.buffer as ArrayBuffer);
    // Standard MIDI Files 1.0: meta event 1 is a text.
    const texts = file
      .getTrackEvents(0)
      .flatMap(({ type, subtype, data }) => (type === 0xff && subtype === 1 ? [data ?? []] : []));
    expect(texts.map((codes) => String.fromCharCode(...codes))).toEqual([handsSaid[hands]]);
  });

  it('is null where nothing was graded', () => {
    expect(takeMidi(exampleResult({ segments: [] }))).toBeNull();
  });
});

describe('velocityOf', () => {
  it('is the example of its comment, and stays within 1 to 127', () => {
    expect(velocityOf(-16, -12)).toBe(117);
    expect(velocityOf(-12, -12)).toBe(127);
    expect(velocityOf(-120, -12)).toBe(1);
  });
});
