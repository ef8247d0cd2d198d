import { type ListedAssignment, listAssignments } from '../../library/assignments.ts';
import type { LibraryDb } from '../../library/library.ts';
import { CommandFault } from '../command-fault.ts';

/** Assignments looked through: more than a studio hands out in years. */
const most = 10_000;

/** The assignment whose id begins so, or the `newest`. Throws a usage fault where none or several do. */
export async function findAssignment(db: LibraryDb, typed: string): Promise<ListedAssignment> {
  const all = await listAssignments(db, { limit: most });
  const found = typed === 'newest' ? all.slice(0, 1) : all.filter(({ id }) => id.startsWith(typed));
  if (found.length === 1) return found[0]!;
  throw new CommandFault(
    'usage',
    found.length === 0
      ? `No assignment is called "${typed}". \`evenhand assignments --all\` lists them.`
      : `Several assignments begin with "${typed}". Write more of the name.`,
  );
}
