import { nearestText } from '../../core/exercise/nearest-text.ts';
import type { LibraryDb } from '../../library/library.ts';
import { nameKey } from '../../library/name-key.ts';
import { type ListedPerson, listPeople } from '../../library/people.ts';
import { CommandFault } from '../command-fault.ts';

/** The player of a name, or undefined. Throws a usage fault where two share it. */
export async function playerNamed(db: LibraryDb, name: string): Promise<ListedPerson | undefined> {
  const found = (await listPeople(db)).filter((person) => nameKey(person.name) === nameKey(name));
  if (found.length > 1)
    throw new CommandFault(
      'usage',
      `Two players are called "${name}". Give one another name first: \`evenhand players rename\`.`,
    );
  return found[0];
}

/** The one name whose first words were typed: "Mirelle" for "Mirelle Quist". */
function beginningSo(typed: string, names: readonly string[]): string | undefined {
  const found = names.filter((name) => `${nameKey(name)} `.startsWith(`${nameKey(typed)} `));
  return found.length === 1 ? found[0] : undefined;
}

/** The player of a name. Throws a usage fault, with the nearest name, where there is none. */
export async function findPlayer(db: LibraryDb, name: string): Promise<ListedPerson> {
  const found = await playerNamed(db, name);
  if (found !== undefined) return found;
  const names = (await listPeople(db)).map((person) => person.name);
  const nearest = beginningSo(name, names) ?? nearestText(name, names);
  const hint =
    nearest !== ''
      ? `Did you mean "${nearest}"?`
      : 'A player comes with the first take: `evenhand grade … --player NAME`, or `evenhand players add NAME`.';
  throw new CommandFault('usage', `There is no player "${name}" in this library. ${hint}`);
}
