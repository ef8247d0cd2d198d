import { median } from '../stats/median.ts';
import type { Finding, HeardRecording } from './heard-recording.ts';

/** A click so far over the taps is worth a word, dB: peak against a tap's level. */
const leastDb = 12;
const fewest = 4;

/** A click much louder in the microphone than the taps. It is taken off before strokes are looked for. */
export function clickBleed({ hearing, performance }: HeardRecording): Finding | null {
  const { click } = hearing;
  const taps = performance.strokes.filter(({ slot }) => !slot.accent);
  if (click === null || click.played !== undefined || taps.length < fewest) return null;
  const overDb = click.levelDb - median(taps.map(({ levelDb }) => levelDb));
  if (overDb < leastDb) return null;
  return { code: 'click-loud', facts: { overDb }, spoils: [] };
}
