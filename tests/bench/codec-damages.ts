import { programPath } from '../programs.ts';
import { type Codec, throughCodec } from './codec.ts';
import type { Damage } from './damage.ts';

const ffmpeg = programPath('ffmpeg');

const codec = (
  name: string,
  encoder: Codec['encoder'],
  container: Codec['container'],
  rates: number[],
): Damage[] =>
  ffmpeg === undefined
    ? []
    : [
        {
          name,
          toldBy: ['lossy-codec', 'spectral-holes', 'narrow-band'],
          strengths: rates.map((kilobits) => ({
            label: `${kilobits} kbit/s`,
            spoil: (samples, sampleRate) =>
              throughCodec(ffmpeg, samples, sampleRate, { encoder, container, kilobits }),
          })),
        },
      ];

/** What lossy codecs do at ever lower bit rates; none without ffmpeg. */
export const codecDamages: readonly Damage[] = [
  ...codec('MP3', 'libmp3lame', 'mp3', [128, 64, 32, 16]),
  ...codec('AAC', 'aac', 'adts', [96, 64, 32, 16]),
  ...codec('Opus', 'libopus', 'ogg', [48, 24, 12, 6]),
];
