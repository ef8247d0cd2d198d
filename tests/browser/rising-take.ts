import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { encodeWav } from '../../fixtures/generator/wav-file.ts';
import { lineFromText } from '../../src/core/exercise/line-from-text.ts';
import { risingSheet } from '../../src/core/exercise/rising-sheet.ts';
import { recordRising } from '../bench/breakdown-takes.ts';

/**
 * A recording of somebody who plays an exercise from 180 on by 5, eight beats each, and stops after four tempos. It
 * begins about as long before the first stroke as the page takes to count in; tempos lie so near to each other that
 * a few tenths of a second more or less move no stroke off its place.
 */
export function stoppingPlayer(): { readonly wav: string; remove(): void } {
  const parsed = lineFromText('>RLR >LRL', { repeats: 4 });
  if (!parsed.ok) throw new Error('no line');
  const { samples, sampleRate } = recordRising(
    risingSheet(parsed.line, { from: 180, to: 220, step: 5 }),
    { scatter: 0.03, missed: 0, stumbles: 0, fall: { kind: 'stops' }, from: 4 },
    { kind: 'rubber-pad', contrastDb: 14, room: null, noiseDb: -75, clickDb: null, delay: 0.6 },
    'stops',
  );
  const folder = mkdtempSync(join(tmpdir(), 'evenhand-rising-'));
  const wav = join(folder, 'rising.wav');
  writeFileSync(wav, encodeWav(samples, sampleRate));
  return { wav, remove: () => rmSync(folder, { recursive: true, force: true }) };
}
