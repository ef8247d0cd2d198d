import type { Slot } from '../../../src/core/exercise/slot.ts';
import { machine, simulatedPerformance, type Take } from './simulated-performance.ts';

/** A take without timing faults, its levels as wanted, 1.5 dB of scatter of which a third fades slowly. */
export const takeOfLevels = (sheet: string, level: (slot: Slot) => number, rest: Partial<Take> = {}) =>
  simulatedPerformance({
    sheet: `tempo: 110\n${sheet}`,
    seed: 1,
    player: machine,
    levelMemory: 0.3,
    level,
    ...rest,
  });

/** The usual two levels, dBFS. */
export const plain = ({ accent }: Slot): number => (accent ? -18 : -30);
