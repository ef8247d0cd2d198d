import type { Sheet } from '../../../src/core/exercise/sheet.ts';
import { gradeTake } from '../../../src/core/grade-take.ts';
import type { RecordingFinding, TakeResult } from '../../../src/core/result/take-result.ts';
import { memorySource } from '../../bench/bench-take.ts';

/** The result of a recording of one channel. */
export const gradeSamples = (samples: Float32Array, sampleRate: number, sheet: Sheet): TakeResult =>
  gradeTake(memorySource(samples, sampleRate), sheet, { name: 'take.wav' });

/** What the check of a recording found of one kind. */
export const found = (result: TakeResult, code: string): RecordingFinding | undefined =>
  result.recording.check!.find((finding) => finding.code === code);
