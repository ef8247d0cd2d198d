import { memoryBytes } from '../../src/formats/memory-bytes.ts';
import { recordingFaultSentence } from '../../src/formats/recording-fault-sentences.ts';
import { riffLayout } from '../../src/formats/riff-layout.ts';
import { wavSource } from '../../src/formats/wav-source.ts';
import { writeWav } from '../../src/formats/write-wav.ts';
import { gradedWhole, hostileTake } from './hostile-takes.ts';

const { source: strokes, sheet } = hostileTake('strokes as asked', 'triplets', {
  frames: 16_000,
  sampleRate: 8000,
});

/** Whole wave files of strokes, of every depth that is written, one and two channels. */
export function wavCorpus(): Uint8Array[] {
  const samples = strokes.read(0, 0, strokes.length);
  return (['int16', 'int24', 'float32'] as const).flatMap((depth) =>
    [1, 2].map((count) =>
      writeWav({ channels: Array.from({ length: count }, () => samples), sampleRate: 8000, depth }),
    ),
  );
}

/** Ids and lengths that mean something in a wave file. */
export const wavWords = [
  'data',
  'fmt ',
  'RF64',
  'ds64',
  'LIST',
  '\xff\xff\xff\xff',
  '\x01\x00',
  '\x03\x00',
  '\xfe\xff',
];

/** Reads a wave file and grades what it holds. A fault has to have its two sentences. Throws what is wrong. */
export function readAndGrade(bytes: Uint8Array): 'graded' | 'not-gradable' | 'refused' {
  const file = memoryBytes(bytes);
  const outcome = riffLayout(file);
  if (!outcome.ok) {
    const said = recordingFaultSentence('take.wav', outcome.fault);
    if (!/^"take\.wav" .*\. .*\.$/s.test(said)) throw new Error(`not two sentences: ${said}`);
    return 'refused';
  }
  return gradedWhole({ name: 'damaged', source: wavSource(file, outcome.layout), sheet });
}
