import { describe, expect, it } from 'vitest';
import { longestInside, soundForReport } from '../../src/cli/sound-for-report.ts';
import type { Source } from '../../src/core/signal/source.ts';
import { smallTake } from '../charts/small-take.ts';
import { formulaSource } from '../support/float-source.ts';

const rate = 8000;
const noise = (seconds: number): Source => formulaSource(rate, seconds * rate, (n) => 0.5 * Math.sin(n * n));

describe('soundForReport', () => {
  it('puts a short take inside, with a print to find its beginning by', async () => {
    const made = (await soundForReport(noise(3), smallTake(2), 'monday.html'))!;
    expect(made.file).toBeNull();
    if (made.sound.place !== 'inside') throw new Error('beside');
    expect(made.sound.uri).toMatch(/^data:audio\/mpeg;base64,\/\+/);
    expect(made.sound.sampleRate).toBe(rate);
    expect(made.sound.print!.at).toBeCloseTo(0.996, 3);
  });

  it('makes a file beside the report of a long one, and nothing for a report on the screen', async () => {
    const long = noise(longestInside + 1);
    const made = (await soundForReport(long, smallTake(2), '/a/monday.html'))!;
    expect(made.sound).toEqual({ place: 'beside', file: 'monday-sound.mp3' });
    expect(made.file!.path).toBe('/a/monday-sound.mp3');
    expect(made.file!.bytes.length).toBeGreaterThan(1e6);
    expect(await soundForReport(long, smallTake(2), '-')).toBeNull();
  });
});
