import { type AssignmentPlay, assignmentPlays } from './assignment-plays.ts';
import { type ListedAssignment, listAssignments } from './assignments.ts';
import type { LibraryDb } from './library.ts';

export interface PlayedAssignment extends ListedAssignment {
  /** The player's takes that count as played to it, oldest first. */
  readonly plays: readonly AssignmentPlay[];
}

/** What a player is still to practise, what was handed out to anybody included; what is due first comes first. */
export async function openAssignments(
  db: LibraryDb,
  personId: string | null,
): Promise<readonly PlayedAssignment[]> {
  const own = await listAssignments(db, { personId });
  const anybody = personId === null ? [] : await listAssignments(db, { personId: null });
  const open = [...own, ...anybody].filter(({ doneAt }) => doneAt === null);
  const late = '9999';
  return Promise.all(
    open
      .toSorted((a, b) => (a.dueDay ?? late).localeCompare(b.dueDay ?? late))
      .map(async (one) => ({ ...one, plays: await assignmentPlays(db, { ...one, personId }) })),
  );
}

/** What was handed out, open and done, newest first, each with what was played to it: of everybody. */
export async function assignmentsPlayed(db: LibraryDb): Promise<readonly PlayedAssignment[]> {
  const all = await listAssignments(db);
  return Promise.all(all.map(async (one) => ({ ...one, plays: await assignmentPlays(db, one) })));
}
