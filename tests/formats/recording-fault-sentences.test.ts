import { describe, expect, it } from 'vitest';
import type { RecordingFault } from '../../src/formats/recording-fault.ts';
import { recordingFaultSentence } from '../../src/formats/recording-fault-sentences.ts';

const none = {};
const faults: {
  [Code in RecordingFault['code']]: [Extract<RecordingFault, { code: Code }>['facts'], string];
} = {
  'file-missing': [none, 'no file'],
  'is-a-folder': [none, 'folder'],
  'not-permitted': [none, 'permissions'],
  'empty-file': [none, 'empty'],
  'nothing-piped': [none, 'Name a file'],
  'too-much-piped': [{ mebibytes: 1024 }, '1024 MiB'],
  'read-failed': [{ reason: 'EIO: i/o error' }, 'EIO: i/o error'],
  'not-a-recording': [{ kind: 'wma' }, 'WMA'],
  'coded-unreadable': [{ kind: 'flac' }, 'FLAC'],
  'no-sound-track': [{ kind: 'mp4' }, 'no sound'],
  'codec-unreadable': [{ codec: 'ac3' }, 'Dolby Digital'],
  'decoder-missing': [{ codec: 'aac' }, 'npm install @audio/decode-aac'],
  'too-many-channels': [{ channels: 12, most: 8 }, '12 channels'],
  'too-long': [none, 'longer than'],
  'riff-without-wave': [{ form: 'AVI ' }, '"AVI "'],
  'big-endian-wave': [none, 'RIFX'],
  'no-format': [none, 'describes its samples'],
  'format-cut-short': [{ bytes: 14 }, '14 bytes'],
  'coding-unreadable': [{ coding: 'A-law' }, 'A-law'],
  'depth-unreadable': [{ coding: 'PCM', bits: 40 }, '40-bit PCM'],
  'no-channels': [none, '0 channels'],
  'rate-out-of-range': [{ sampleRate: 4000, lowest: 8000, highest: 192000 }, '4000 Hz'],
  'frame-size-contradiction': [{ frameBytes: 5, channels: 2, bits: 16 }, '5 bytes'],
  'no-data': [none, 'holds the sound'],
  'no-samples': [none, 'length is 0'],
};

describe('recordingFaultSentence', () => {
  it('runs the example of its comment', () => {
    expect(recordingFaultSentence('take.wav', { code: 'file-missing', facts: {} })).toBe(
      'There is no file "take.wav" here. Check its name and its folder.',
    );
  });

  it.each(Object.entries(faults))(
    'names the file, what was found and what to do: %s',
    (code, [facts, found]) => {
      const text = recordingFaultSentence('take 7.wav', { code, facts } as RecordingFault);
      if (code !== 'nothing-piped' && code !== 'too-much-piped') expect(text).toContain('"take 7.wav"');
      expect(text).toContain(found);
      // A second sentence, in the imperative, says what to do.
      expect(text).toMatch(/\. (Check|Name|Change|Copy|Save|Choose|Record) [^.]*\.$/);
    },
  );

  it('tells a recording of another kind from the wrong file', () => {
    const text = (kind: 'wma' | 'png') =>
      recordingFaultSentence('x', { code: 'not-a-recording', facts: { kind } });
    expect(text('wma')).toBe(
      '"x" is a WMA recording, a kind that can\'t be read here. Save it as a WAV file (PCM, 16 or 24 bit) in the recorder or an audio editor and open that.',
    );
    expect(text('png')).toBe('"x" is a PNG picture, not a recording. Choose the recording of the take.');
  });

  it('prints no control characters out of the file', () => {
    const text = recordingFaultSentence('x', { code: 'riff-without-wave', facts: { form: '\x1b[2J' } });
    expect(text).toContain('"?[2J"');
  });

  it('speaks of a pipe where there is no file name', () => {
    expect(recordingFaultSentence('standard input', { code: 'no-data', facts: {} })).toMatch(
      /^What came through the pipe is/,
    );
  });
});
