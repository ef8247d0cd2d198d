import { writeFileSync } from 'node:fs';
import { seeded } from '../../fixtures/generator/random.ts';
import { encodeWav } from '../../fixtures/generator/wav-file.ts';
import { lineFromText } from '../../src/core/exercise/line-from-text.ts';
import { risingSheet, type TempoRise } from '../../src/core/exercise/rising-sheet.ts';
import { type RisingPlayer, recordRising } from '../bench/breakdown-takes.ts';

/** s of the recording at which the page's click begins: it opens the microphone first. */
const trackAt = 1.2;

export interface RisingMicrophone {
  readonly notation: string;
  /** Times at each tempo. */
  readonly repeats: number;
  readonly rise: TempoRise;
  /** Breaks down in its line `from`. */
  readonly player: Partial<RisingPlayer>;
  /** Peak of the click in the microphone, dBFS, or null where it isn't heard. */
  readonly clickDb: number | null;
}

/** Writes what a microphone hears of a player who goes through a rise. */
export function writeRisingMicrophone(
  path: string,
  { notation, repeats, rise, player, clickDb }: RisingMicrophone,
): void {
  const line = lineFromText(notation, { repeats });
  if (!line.ok) throw new Error('no line');
  const sheet = risingSheet(line.line, rise);
  const played = {
    scatter: 0.04,
    missed: 0,
    stumbles: 0,
    fall: { kind: 'stops' },
    from: 4,
    ...player,
  } as const;
  const surroundings = {
    kind: 'rubber-pad',
    contrastDb: 12,
    room: null,
    noiseDb: -65,
    clickDb,
    delay: 0,
  } as const;
  const recorded = recordRising(sheet, played, surroundings, 'rising microphone');
  const quiet = seeded('before the first block');
  const before = Float32Array.from(
    { length: Math.max(0, Math.round((trackAt - recorded.trackAt) * recorded.sampleRate)) },
    () => 0.0003 * quiet.normal(),
  );
  const samples = new Float32Array(before.length + recorded.samples.length);
  samples.set(before);
  samples.set(recorded.samples, before.length);
  writeFileSync(path, encodeWav(samples, recorded.sampleRate));
}
