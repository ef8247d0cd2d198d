import { describe, expect, it } from 'vitest';
import { openRecording } from '../../../src/formats/open-recording.ts';
import { findDelay, usualDelay } from '../../../src/report/listening/find-delay.ts';
import { soundPrint } from '../../../src/report/listening/sound-print.ts';

const opened = await openRecording('fixtures/takes/demo.wav');
if (!opened.ok) throw new Error('no recording to test with');
const { source } = opened;
const samples = source.read(0, 0, source.length);
const print = soundPrint(source, { time: [5.006, 6.19], levelDb: [-17.7, -14] })!;

describe('findDelay', () => {
  it.each([0, 1, 576, 1105, 2257])('finds a delay of %i samples', (delay) => {
    const late = new Float32Array(samples.length + delay);
    late.set(samples, delay);
    expect(findDelay({ samples: late, sampleRate: source.sampleRate }, print)).toBe(delay);
  });

  it('finds a sound that begins too early', () => {
    expect(findDelay({ samples: samples.subarray(300), sampleRate: source.sampleRate }, print)).toBe(-300);
  });

  it('takes the usual delay for a sound that is another', () => {
    const silence = new Float32Array(samples.length);
    expect(findDelay({ samples: silence, sampleRate: source.sampleRate }, print)).toBe(usualDelay);
  });
});

describe('soundPrint', () => {
  it('is taken at the loudest stroke', () => {
    expect(print.at).toBeCloseTo(6.186, 3);
    expect(Math.max(...print.samples.map(Math.abs))).toBe(127);
    expect(soundPrint(source, { time: [], levelDb: [] })).toBeNull();
  });
});
