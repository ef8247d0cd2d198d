import type { LayoutFault, RecordingFault } from './recording-fault.ts';
import type { RecordingKind } from './recording-kind.ts';
import { sampleRates } from './wave-format.ts';

const saveAsWav =
  'Save it as a WAV file (PCM, 16 or 24 bit) in the recorder or an audio editor and open that.';

const installDecoder = '`npm install @audio/decode-aac`';

/** Codings whose decoder a user installs. */
export const installed = { aac: 'AAC', alac: 'Apple Lossless (ALAC)' } as const;

/** Codings whose names aren't known to everybody; others go by their own. */
const codings: Readonly<Record<string, string>> = {
  ac3: 'Dolby Digital (AC-3)',
  eac3: 'Dolby Digital Plus (E-AC-3)',
  dts: 'DTS',
  ulaw: 'µ-law',
  alaw: 'A-law',
  samr: 'AMR, a coding for speech that leaves out what strokes are made of',
  sawb: 'AMR wideband, a coding for speech that leaves out what strokes are made of',
};

/** A file that holds sound which can't be read is worth saving anew; any other is the wrong file. */
const kinds: Readonly<Record<RecordingKind, { readonly words: string; readonly holdsSound: boolean }>> = {
  mp3: { words: 'an MP3 recording', holdsSound: true },
  flac: { words: 'a FLAC recording', holdsSound: true },
  m4a: { words: 'an M4A recording, as phones make them', holdsSound: true },
  aac: { words: 'an AAC recording', holdsSound: true },
  ogg: { words: 'an Ogg recording', holdsSound: true },
  aiff: { words: 'an AIFF recording', holdsSound: true },
  caf: { words: 'a CAF recording', holdsSound: true },
  au: { words: 'an AU recording', holdsSound: true },
  amr: {
    words: 'an AMR recording, a coding for speech that leaves out what strokes are made of',
    holdsSound: true,
  },
  wma: { words: 'a WMA recording', holdsSound: true },
  wave64: { words: 'a Wave64 recording', holdsSound: true },
  webm: { words: 'a WebM recording or video', holdsSound: true },
  mp4: { words: 'an MP4 video or recording', holdsSound: true },
  quicktime: { words: 'a QuickTime video', holdsSound: true },
  '3gp': { words: 'a 3GP video or recording', holdsSound: true },
  midi: { words: 'a MIDI file, which holds notes but no sound', holdsSound: false },
  png: { words: 'a PNG picture', holdsSound: false },
  jpeg: { words: 'a JPEG picture', holdsSound: false },
  gif: { words: 'a GIF picture', holdsSound: false },
  pdf: { words: 'a PDF document', holdsSound: false },
  zip: { words: 'a ZIP archive', holdsSound: false },
  text: { words: 'a text file', holdsSound: false },
  riff: { words: 'a RIFF file without sound', holdsSound: false },
  unknown: { words: 'no kind of recording that is known here', holdsSound: false },
};

/**
 * One sentence on what is wrong with a file and one on what to do about it.
 *
 * @example
 * recordingFaultSentence('take.wav', { code: 'file-missing', facts: {} });
 * // 'There is no file "take.wav" here. Check its name and its folder.'
 */
export function recordingFaultSentence(name: string, fault: RecordingFault): string {
  const file = name === 'standard input' ? 'What came through the pipe' : `"${name}"`;
  switch (fault.code) {
    case 'file-missing':
      return `There is no file ${file} here. Check its name and its folder.`;
    case 'is-a-folder':
      return `${file} is a folder. Name the recording inside it.`;
    case 'not-permitted':
      return `${file} may not be read by this user. Change its permissions or copy it to a folder of your own.`;
    case 'nothing-piped':
      return 'A recording was to come through a pipe, but nothing is connected. Name a file instead of "-".';
    case 'too-much-piped':
      return `More than ${fault.facts.mebibytes} MiB came through the pipe, which is more than can be held. Name the file instead of "-".`;
    case 'read-failed':
      return `${file} could not be read: ${fault.facts.reason}. Copy it to another folder and try again.`;
    default:
      return layoutSentence(file, fault);
  }
}

function layoutSentence(file: string, fault: LayoutFault): string {
  switch (fault.code) {
    case 'empty-file':
      return `${file} is empty: it holds no bytes at all. Copy it from the recorder again or record the take anew.`;
    case 'coded-unreadable':
      return `${file} is ${kinds[fault.facts.kind].words}, but damaged or cut short so that its sound can't be decoded. Copy it from the recorder again.`;
    case 'no-sound-track':
      return `${file} is ${kinds[fault.facts.kind].words} in which no sound was found: it has none, or it is damaged or cut short. Choose another recording or copy it from the recorder again.`;
    case 'codec-unreadable':
      return `${file} holds sound in a coding that can't be read here: ${codings[fault.facts.codec] ?? printable(fault.facts.codec)}. ${saveAsWav}`;
    case 'decoder-missing':
      return `${file} holds sound coded as ${installed[fault.facts.codec]}, whose decoder has a licence of its own (GPL) and isn't part of this program. Save it as a WAV or FLAC file, or install the decoder beside the program (${installDecoder}) and try again.`;
    case 'too-many-channels':
      return `${file} has ${fault.facts.channels} channels; up to ${fault.facts.most} can be read. ${saveAsWav}`;
    case 'too-long':
      return `${file} is longer than can be graded at once. Save the part with the take as a file of its own and open that.`;
    case 'not-a-recording': {
      const { words, holdsSound } = kinds[fault.facts.kind];
      if (holdsSound) return `${file} is ${words}, a kind that can't be read here. ${saveAsWav}`;
      const none = fault.facts.kind === 'unknown' ? words : `${words}, not a recording`;
      return `${file} is ${none}. Choose the recording of the take.`;
    }
    case 'riff-without-wave':
      return `${file} is a RIFF file of the form "${printable(fault.facts.form)}", not WAVE. ${saveAsWav}`;
    case 'big-endian-wave':
      return `${file} is a big-endian WAV file (RIFX), which can't be read yet. ${saveAsWav}`;
    case 'no-format':
      return `${file} is a recording without the part that describes its samples. Copy it from the recorder again.`;
    case 'format-cut-short':
      return `${file} is a recording whose description of its samples breaks off after ${fault.facts.bytes} bytes. Copy it from the recorder again.`;
    case 'coding-unreadable':
      return `${file} is a recording with compressed or unusual samples (${fault.facts.coding}), which can't be read yet. ${saveAsWav}`;
    case 'depth-unreadable':
      return `${file} is a recording with ${fault.facts.bits}-bit ${fault.facts.coding} samples, which can't be read yet. ${saveAsWav}`;
    case 'no-channels':
      return `${file} is a recording with 0 channels. Record the take anew with one channel or two.`;
    case 'rate-out-of-range':
      return `${file} has a sample rate of ${fault.facts.sampleRate} Hz; ${sampleRates.lowest} to ${sampleRates.highest} Hz can be read. Record with 44100 or 48000 Hz.`;
    case 'frame-size-contradiction':
      return `${file} is a recording that contradicts itself: ${fault.facts.frameBytes} bytes can't hold ${fault.facts.channels} × ${fault.facts.bits} bits. ${saveAsWav}`;
    case 'no-data':
      return `${file} is a recording without the part that holds the sound. Copy it from the recorder again.`;
    case 'no-samples':
      return `${file} is a recording that holds no sound: its length is 0. Record the take anew.`;
  }
}

const printable = (text: string): string => text.replaceAll(/[^ -~]/g, '?');
