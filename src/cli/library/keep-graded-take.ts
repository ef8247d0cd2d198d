import { statSync } from 'node:fs';
import type { Sheet } from '../../core/exercise/sheet.ts';
import { writeSheet } from '../../core/exercise/write-sheet.ts';
import type { TakeResult } from '../../core/result/take-result.ts';
import { graderVersion } from '../../library/grader-version.ts';
import { keepTake } from '../../library/keep-take.ts';
import type { Library } from '../../library/library.ts';
import { listedTakes } from '../../library/listed-takes.ts';
import { addPerson } from '../../library/people.ts';
import { playerNamed } from './find-player.ts';
import type { KeepOptions } from './keep-options.ts';
import { localDay } from './local-day.ts';

export interface GradedTake {
  readonly result: TakeResult;
  readonly sheet: Sheet;
  /** The recording, and where it came from; `-` is a pipe. */
  readonly path: string;
  readonly name: string;
  readonly bytes: Uint8Array;
}

export interface KeptUnder {
  readonly id: string;
  readonly outcome: 'kept' | 'already-there';
  /** Who has the take; empty where nobody has. */
  readonly player: string;
  readonly newPlayer: boolean;
  /** The day it counts for, and whether that is yet to come by this computer's clock. */
  readonly day: string;
  readonly ahead: boolean;
}

/**
 * Keeps a graded take under its player, who is added when new. A take that is there already stays with whoever has it.
 */
export async function keepGradedTake(
  library: Library,
  { result, sheet, path, name, bytes }: GradedTake,
  options: KeepOptions,
): Promise<KeptUnder> {
  const player = options.player!;
  const now = Date.now();
  const written = path === '-' ? now : statSync(path).mtimeMs;
  const day = options.day ?? localDay(new Date(written));
  // A day that was named counts from its noon, wherever the file's own clock stands.
  const recordedAt = options.day === undefined ? Math.round(written) : new Date(`${day}T12:00`).getTime();
  const { technique, pad, sticks, device, tag = [] } = options;
  const details = { technique, pad, sticks, device };
  const take = {
    result,
    sheetText: writeSheet(sheet),
    audio: { name, bytes },
    recordedAt,
    day,
    keptAt: now,
    personId: null,
    details: Object.fromEntries(Object.entries(details).filter(([, value]) => value !== undefined)),
    tags: tag,
    gradedWith: graderVersion,
  };
  let newPlayer = false;
  const { id, outcome } = await keepTake(library, take, {
    // Inside the transaction, or two programs at once would both add the player.
    before: async (db) => {
      const known = await playerNamed(db, player);
      const personId = known?.id ?? crypto.randomUUID();
      newPlayer = known === undefined;
      if (newPlayer)
        await addPerson(db, { id: personId, name: player, role: 'player', note: '', createdAt: now });
      return { personId, setUpId: null };
    },
  });
  const [there] = await listedTakes(library.db, [id]);
  const ahead = day > localDay(new Date(now));
  return { id, outcome, player: there?.personName ?? '', newPlayer, day, ahead };
}
