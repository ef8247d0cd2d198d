import { parseSheet } from '../core/exercise/parse-sheet.ts';
import { writeSheet } from '../core/exercise/write-sheet.ts';
import { listAssignments, setAssignment } from './assignments.ts';
import type { LibraryDb } from './library.ts';
import { nameKey } from './name-key.ts';
import { addPerson, listPeople } from './people.ts';

interface ReceivedAssignment {
  readonly outcome: 'kept' | 'already-there';
  /** For whom; null for anybody. */
  readonly personId: string | null;
  readonly dueDay: string | null;
}

/**
 * Keeps a teacher's sheet as an assignment of the player that its headings name, who is added where nobody has that name,
 * else of `personId`. The same sheet until the same day is kept once. Null for a sheet without headings.
 *
 * @example await receiveAssignment(db, { id, sheetText: 'for: Mirelle\ndue: 2026-12-01\n>RLR', personId: null, setAt })
 */
export async function receiveAssignment(
  db: LibraryDb,
  {
    id,
    sheetText: text,
    personId: player,
    setAt,
  }: {
    readonly id: string;
    readonly sheetText: string;
    readonly personId: string | null;
    readonly setAt: number;
  },
): Promise<ReceivedAssignment | null> {
  const parsed = parseSheet(text);
  if (!parsed.ok || parsed.sheet.assigned === undefined) return null;
  const { assigned, ...sheet } = parsed.sheet;
  const sheetText = writeSheet(sheet);
  const { due: dueDay, note } = assigned;
  const personId = assigned.player === '' ? player : await personNamed(db, assigned.player, player, setAt);
  const known = (await listAssignments(db, { personId })).some(
    (one) => one.sheetText === sheetText && one.dueDay === dueDay,
  );
  if (known) return { outcome: 'already-there', personId, dueDay };
  await setAssignment(db, { id, personId, bpm: null, dueDay, note, setAt, doneAt: null, sheetText });
  return { outcome: 'kept', personId, dueDay };
}

/** The person of a name: whoever plays now where two share it, the first otherwise, or a new one. */
async function personNamed(
  db: LibraryDb,
  name: string,
  player: string | null,
  createdAt: number,
): Promise<string> {
  const named = (await listPeople(db)).filter((person) => nameKey(person.name) === nameKey(name));
  const found = named.find(({ id }) => id === player) ?? named[0];
  if (found !== undefined) return found.id;
  const id = crypto.randomUUID();
  await addPerson(db, { id, name, role: 'student', note: '', createdAt });
  return id;
}
