import { execFile } from 'node:child_process';
import { createRequire } from 'node:module';
import { resolve } from 'node:path';
import type { HeardEvent } from './score-take.ts';

/** Detectors of the essentia.js package that give times of onsets; `Onsets` itself isn't part of it. */
export const essentiaDetectors = ['OnsetRate', 'SuperFluxExtractor', 'SuperFluxExtractor, hop 128'] as const;
export type EssentiaDetector = (typeof essentiaDetectors)[number];

/** Rate for which essentia's defaults are made, Hz. */
const essentiaRate = 44100;

interface WasmVector {
  delete(): void;
}

/** What is used of essentia.js 0.1.3; names are its own. */
interface Essentia {
  arrayToVector(values: Float32Array): WasmVector;
  vectorToArray(vector: WasmVector): Float32Array;
  OnsetRate(signal: WasmVector): { onsets: WasmVector };
  SuperFluxExtractor(
    signal: WasmVector,
    combineMs?: number,
    frameSize?: number,
    hopSize?: number,
  ): { onsets: WasmVector };
}

/**
 * essentia.js from the folder that `EVENHAND_ESSENTIA` names (one that holds node_modules), else from here; undefined
 * where it isn't installed. It is under the AGPL and no dependency of this project.
 */
export function loadEssentia(): Essentia | undefined {
  const from = resolve(process.env.EVENHAND_ESSENTIA || '.', 'package.json');
  const require = createRequire(from);
  try {
    require.resolve('essentia.js');
  } catch {
    return undefined;
  }
  const { Essentia, EssentiaWASM } = require('essentia.js');
  return new Essentia(EssentiaWASM);
}

/** A WAV file's sound at essentia's rate, resampled by ffmpeg. */
export function samplesForEssentia(ffmpeg: string, wavPath: string): Promise<Float32Array> {
  const asked = ['-v', 'error', '-i', wavPath, '-ac', '1', '-ar', String(essentiaRate), '-f', 'f32le', '-'];
  return new Promise((done, failed) => {
    execFile(ffmpeg, asked, { encoding: 'buffer', maxBuffer: 2 ** 30 }, (error, stdout) => {
      if (error) failed(error);
      else done(new Float32Array(stdout.buffer.slice(stdout.byteOffset, stdout.byteOffset + stdout.length)));
    });
  });
}

/** Onsets that a detector of essentia finds, its settings as they come but for the hop where the name says so. */
export function essentiaOnsets(
  essentia: Essentia,
  detector: EssentiaDetector,
  samples: Float32Array,
): HeardEvent[] {
  const signal = essentia.arrayToVector(samples);
  const { onsets } =
    detector === 'OnsetRate'
      ? essentia.OnsetRate(signal)
      : detector === 'SuperFluxExtractor'
        ? essentia.SuperFluxExtractor(signal)
        : essentia.SuperFluxExtractor(signal, 20, 2048, 128);
  const times = Array.from(essentia.vectorToArray(onsets));
  signal.delete();
  onsets.delete();
  return times.sort((a, b) => a - b).map((time) => ({ time }));
}
