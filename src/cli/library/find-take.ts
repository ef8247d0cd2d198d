import type { LibraryDb } from '../../library/library.ts';
import { listTakes } from '../../library/list-takes.ts';
import { CommandFault } from '../command-fault.ts';

const fewestSigns = 4;

/**
 * The id of a take from what was typed: the beginning of an id, at least four signs, or `newest`. Throws a usage fault
 * where none or several begin so.
 */
export async function findTake(db: LibraryDb, typed: string, personId?: string): Promise<string> {
  if (typed === 'newest') {
    const { takes } = await listTakes(db, { filter: { personId }, limit: 1 });
    if (takes[0] !== undefined) return takes[0].id;
    throw new CommandFault('usage', 'There are no takes in this library yet.');
  }
  const start = typed.toLowerCase();
  if (!/^[0-9a-f]+$/.test(start) || start.length < fewestSigns)
    throw new CommandFault(
      'usage',
      `"${typed}" names no take. Write the first ${fewestSigns} or more signs of its name on the list (\`evenhand takes\`), or newest.`,
    );
  const found = await db
    .selectFrom('take')
    .select('id')
    .where('id', '>=', start)
    .where('id', '<=', `${start}g`)
    .limit(2)
    .execute();
  if (found.length === 1) return found[0]!.id;
  throw new CommandFault(
    'usage',
    found.length === 0
      ? `No take begins with "${typed}". \`evenhand takes\` lists them.`
      : `Several takes begin with "${typed}". Write more of the name.`,
  );
}
