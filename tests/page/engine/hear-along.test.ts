import { describe, expect, it, vi } from 'vitest';
import { gradeTake } from '../../../src/core/grade-take.ts';
import { memoryBytes } from '../../../src/formats/memory-bytes.ts';
import { riffLayout } from '../../../src/formats/riff-layout.ts';
import { wavSource } from '../../../src/formats/wav-source.ts';
import { mp3Of } from '../../../src/formats/write-mp3.ts';
import { sha256Hex } from '../../../src/library/sha256-hex.ts';
import { hearAlong } from '../../../src/page/engine/hear-along.ts';
import { openedSample } from '../../support/opened-sample.ts';

const { source, sheet } = openedSample('accent-one');
const { sampleRate, length } = source;
// Finer than 24 bits, as a microphone's samples may be.
const samples = source.read(0, 0, length).map((x, i) => x + 1e-8 * Math.sin(i));

describe('hearAlong', () => {
  it.each([false, true])(
    'grades what the file that it gives back is graded as (followed live: %s)',
    async (live) => {
      const along = hearAlong({ sampleRate, sheet, live });
      const missing = { at: 3 * sampleRate, frames: 700 };
      let told = 0;
      for (let at = 0; at < length; at += 1024) {
        if (at + 1024 > missing.at && at < missing.at + missing.frames) continue;
        // Some of it comes twice.
        const from = Math.max(0, at - 10);
        const heard = along.add(from, samples.slice(from, at + 1024));
        expect(heard === null).toBe(!live);
        told += heard?.strokes.length ?? 0;
      }
      along.over();
      const facts = { name: 'monday.wav', sheet, gaps: [missing] };
      const { result, bytes } = await along.grade(facts);
      const opened = riffLayout(memoryBytes(bytes));
      if (!opened.ok) throw new Error(opened.fault.code);
      const { sheet: _, ...known } = facts;
      const sha256 = await sha256Hex(bytes);
      const atOnce = gradeTake(wavSource(memoryBytes(bytes), opened.layout), sheet, { ...known, sha256 });
      expect(result).toEqual(atOnce);
      // The encoder is loaded beside it all, whenever that is done.
      const mp3 = await vi.waitUntil(() => along.mp3(), { timeout: 20_000 });
      expect(mp3).toEqual(await mp3Of(wavSource(memoryBytes(bytes), opened.layout)));
      expect(result.grading).toEqual({ state: 'graded' });
      expect(result.recording.duration).toBeCloseTo(length / sampleRate, 6);
      if (live) expect(told).toBeGreaterThan(0.9 * result.strokes.time.length);
    },
  );
});
