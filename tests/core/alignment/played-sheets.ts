import type { Sheet } from '../../../src/core/exercise/sheet.ts';
import { line, sheetOf } from './made-sheet.ts';

/** Sheets that the takes are played from. */
export const sheets: Readonly<Record<string, Sheet>> = {
  'one line': sheetOf(line('>RLR >LRL >RLR >LRL', { repeats: 8 })),
  'accent on 2': sheetOf(line('R>LR L>RL R>LR L>RL', { repeats: 8, bpm: 96 })),
  'two accents': sheetOf(line('>R>LR >L>RL >R>LR >L>RL', { repeats: 8, bpm: 80 })),
  'three lines': sheetOf(
    line('>RLR >LRL >RLR >LRL', { repeats: 2, restBeats: 4 }),
    line('R>LR L>RL R>LR L>RL', { repeats: 2, restBeats: 4 }),
    line('RL>R LR>L RL>R LR>L', { repeats: 2, restBeats: 4 }),
  ),
  'four lines, long': sheetOf(
    line('>RRL >LRR >LLR >RLL', { repeats: 4, restBeats: 2, bpm: 120 }),
    line('>R>RL >L>RR >L>LR >R>LL', { repeats: 4, restBeats: 2, bpm: 100 }),
    line('R>LR L>RL R>LR L>RL', { repeats: 4, restBeats: 2, bpm: 130 }),
    line('>RLR LRL >RLR LRL', { repeats: 4, restBeats: 2, bpm: 120 }),
  ),
  sixteenths: sheetOf(line('>RLRL RLR>L RL>RL R>LRL', { repeats: 6, bpm: 90 })),
  sextuplets: sheetOf(line('>RLRLRL >RLRLRL >RLRLRL >RLRLRL', { repeats: 6, bpm: 80 })),
  rests: sheetOf(line('>RLR L-L R-- >LRL | RLR >L-R L-- R', { repeats: 6, bpm: 100 })),
};
