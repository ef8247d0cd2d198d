import type { LibraryDb } from './library.ts';
import { LibraryFault } from './library-fault.ts';
import type { PersonTable } from './library-schema.ts';
import { nameKey, plainName } from './name-key.ts';

export type Person = Omit<Readonly<PersonTable>, 'nameKey'>;

export interface ListedPerson extends Person {
  readonly takes: number;
  /** When the newest take was recorded, or null without takes. */
  readonly lastAt: number | null;
}

const checkedName = (name: string): string => {
  const plain = plainName(name);
  if (nameKey(plain) === '') throw new LibraryFault('name-empty');
  return plain;
};

/** Adds a person; two may share a name. Throws `LibraryFault` for a name without a character. */
export async function addPerson(db: LibraryDb, person: Person): Promise<void> {
  const name = checkedName(person.name);
  await db
    .insertInto('person')
    .values({ ...person, name, nameKey: nameKey(name) })
    .execute();
}

/** Changes a person's name, role or note; what isn't given stays. */
export async function changePerson(
  db: LibraryDb,
  { id, ...changes }: { readonly id: string } & Partial<Pick<Person, 'name' | 'role' | 'note'>>,
): Promise<void> {
  const name = changes.name === undefined ? undefined : checkedName(changes.name);
  const { numUpdatedRows } = await db
    .updateTable('person')
    .set({
      ...(name === undefined ? {} : { name, nameKey: nameKey(name) }),
      ...(changes.role === undefined ? {} : { role: changes.role }),
      ...(changes.note === undefined ? {} : { note: changes.note }),
      id,
    })
    .where('id', '=', id)
    .executeTakeFirst();
  if (numUpdatedRows === 0n) throw new LibraryFault('no-such-person');
}

/** All people by name, with how many takes each has. */
export async function listPeople(db: LibraryDb): Promise<readonly ListedPerson[]> {
  return db
    .selectFrom('person')
    .select(['person.id', 'person.name', 'person.role', 'person.note', 'person.createdAt'])
    .select(({ selectFrom }) => [
      selectFrom('take')
        .select(({ fn }) => fn.countAll<number>().as('takes'))
        .whereRef('take.personId', '=', 'person.id')
        .$asScalar()
        .$notNull()
        .as('takes'),
      selectFrom('take')
        .select(({ fn }) => fn.max('take.recordedAt').as('lastAt'))
        .whereRef('take.personId', '=', 'person.id')
        .as('lastAt'),
    ])
    .orderBy('person.nameKey')
    .orderBy('person.id')
    .execute();
}

/**
 * The person whom a player of another library is here: the one of that id, or whom that id was joined with before,
 * or the only one of that name, or a new one. Runs inside a transaction.
 */
export async function personFor(
  db: LibraryDb,
  player: { readonly id: string; readonly name: string },
  createdAt: number,
): Promise<string> {
  const own = await db.selectFrom('person').select('id').where('id', '=', player.id).executeTakeFirst();
  if (own !== undefined) return own.id;
  const alias = await db
    .selectFrom('personAlias')
    .select('personId')
    .where('aliasId', '=', player.id)
    .executeTakeFirst();
  if (alias !== undefined) return alias.personId;
  const name = checkedName(player.name);
  const named = await db
    .selectFrom('person')
    .select('id')
    .where('nameKey', '=', nameKey(name))
    .limit(2)
    .execute();
  if (named.length === 1) {
    await db.insertInto('personAlias').values({ aliasId: player.id, personId: named[0]!.id }).execute();
    return named[0]!.id;
  }
  await addPerson(db, { id: player.id, name, role: 'player', note: '', createdAt });
  return player.id;
}
