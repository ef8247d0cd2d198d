import type { CodedForm } from './coded-take.ts';

/** Files as recorders, phones and messengers write them, each by ffmpeg. */
export interface Form extends CodedForm {
  readonly name: string;
  /** The decoder with which ffmpeg reads it, where its usual one is another than ours. */
  readonly decoder?: string;
  /**
   * Frames by which our sound ends later than ffmpeg's: WebM states the padding at its end in a way that isn't read here,
   * and ffmpeg doesn't leave out what MP4 states.
   */
  readonly longer?: number;
  /** One of each coding is graded, too. */
  readonly graded?: true;
  /** Its codec changes levels beyond their intervals: only scores of time are held against the wave file's. */
  readonly levelsChange?: true;
  /** Largest difference of a sample from ffmpeg's: rounding of floats, or of 16 bits where its libopus gives those. */
  readonly largest: number;
}

const floats = 1e-6;
/** AAC's first frame, of nothing but the encoder's delay, is withheld by our decoder and given by ffmpeg's. */
const firstFrame = 1e-3;
const int16 = 2 ** -14;
const libopus = { decoder: 'libopus', largest: int16 };

export const codedForms: readonly Form[] = [
  { name: 'FLAC, 16 bits', file: 'a.flac', graded: true, options: [], largest: 0 },
  {
    name: 'FLAC, 24 bits, stereo',
    file: 'b.flac',
    options: ['-ac', '2', '-sample_fmt', 's32'],
    largest: 0,
  },
  { name: 'FLAC in MP4', file: 'c.mp4', options: ['-c:a', 'flac', '-strict', '-2'], largest: 0 },
  { name: 'MP3', file: 'd.mp3', graded: true, options: ['-b:a', '128k'], largest: floats },
  {
    name: 'MP3, stereo, no LAME tag',
    file: 'e.mp3',
    options: ['-ac', '2', '-write_xing', '0'],
    largest: floats,
  },
  { name: 'Opus in Ogg', file: 'f.opus', graded: true, options: ['-b:a', '64k'], ...libopus },
  {
    name: 'Opus in Ogg, a messenger, 16 kHz',
    file: 'g.ogg',
    graded: true,
    options: ['-c:a', 'libopus', '-ar', '16000', '-b:a', '16k', '-application', 'voip'],
    levelsChange: true,
    ...libopus,
  },
  { name: 'Vorbis in Ogg', file: 'h.ogg', graded: true, options: ['-c:a', 'libvorbis'], largest: floats },
  {
    name: 'Opus in WebM',
    file: 'i.webm',
    graded: true,
    options: ['-c:a', 'libopus'],
    longer: 667,
    ...libopus,
  },
  {
    name: 'Opus in WebM with video',
    file: 'j.webm',
    options: [
      '-f',
      'lavfi',
      '-i',
      'testsrc=size=64x48:rate=5',
      '-c:v',
      'libvpx',
      '-c:a',
      'libopus',
      '-shortest',
    ],
    longer: 667,
    ...libopus,
  },
  { name: 'Opus in MP4', file: 'k.mp4', options: ['-c:a', 'libopus'], longer: -667, ...libopus },
  {
    name: 'PCM in QuickTime, big-endian',
    file: 'l.mov',
    graded: true,
    options: ['-c:a', 'pcm_s24be'],
    largest: 0,
  },
  // Without noise substitution, which decoders fill with noise of their own.
  {
    name: 'AAC in M4A',
    file: 'm.m4a',
    graded: true,
    options: ['-c:a', 'aac', '-aac_pns', '0'],
    longer: -531,
    largest: floats,
  },
  {
    name: 'AAC, plain (ADTS)',
    file: 'n.aac',
    options: ['-c:a', 'aac', '-aac_pns', '0'],
    largest: firstFrame,
  },
  {
    name: 'AAC in QuickTime with video',
    file: 'o.mov',
    graded: true,
    options: [
      ...['-f', 'lavfi', '-i', 'testsrc=size=64x48:rate=5', '-c:v', 'mpeg4'],
      ...['-c:a', 'aac', '-aac_pns', '0', '-shortest'],
    ],
    longer: -531,
    largest: floats,
  },
  {
    name: 'AAC in fragments of MP4',
    file: 'p.mp4',
    options: ['-c:a', 'aac', '-aac_pns', '0', '-movflags', 'frag_keyframe+empty_moov'],
    longer: -531,
    largest: firstFrame,
  },
  { name: 'Apple Lossless in M4A', file: 'q.m4a', graded: true, options: ['-c:a', 'alac'], largest: 0 },
  {
    name: 'Apple Lossless in QuickTime, 24 bits, stereo',
    file: 'r.mov',
    options: ['-c:a', 'alac', '-ac', '2', '-sample_fmt', 's32p'],
    largest: 0,
  },
  { name: 'Apple Lossless in CAF', file: 's.caf', options: ['-c:a', 'alac'], largest: 0 },
  { name: 'Opus in CAF', file: 't.caf', options: ['-c:a', 'libopus'], ...libopus },
  { name: 'PCM in CAF', file: 'u.caf', options: ['-c:a', 'pcm_s24le'], largest: 0 },
  { name: 'PCM in AIFF', file: 'v.aiff', options: ['-c:a', 'pcm_s24be'], largest: 0 },
];
