import { migrateLibrary } from '../../src/library/migrate-library.ts';
import { migrations } from '../../src/library/migrations/index.ts';
import type { Migration } from '../../src/library/migrations/migration.ts';
import { openFolderLibrary } from '../../src/library/open-folder-library.ts';

/** Steps of a later program, each with enough to do to be killed in the middle of. */
export const laterSteps: readonly Migration[] = [1, 2, 3].map((step) => ({
  title: `step ${step}`,
  statements: [
    `create table later${step} (number integer primary key, text text not null) strict`,
    `insert into later${step} with recursive n(i) as (select 1 union all select i + 1 from n where i < 60000)
     select i, hex(randomblob(20)) from n`,
    `alter table take add column later${step} text not null default 'x'`,
  ],
}));

/** Run as a program, it takes a library through them. */
const [, program, folder] = process.argv;
if (program === import.meta.filename && folder !== undefined) {
  const library = await openFolderLibrary(folder);
  await migrateLibrary(library.db, [...migrations, ...laterSteps]);
  await library.close();
}
