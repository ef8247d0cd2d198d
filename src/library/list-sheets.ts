import type { LibraryDb } from './library.ts';

export interface ListedSheet {
  readonly id: string;
  readonly title: string;
  readonly text: string;
  readonly lines: number;
  /** When a take of it was last played, or null where it was only assigned. */
  readonly lastAt: number | null;
}

/** Sheets of the library, the one last played first. */
export async function listSheets(db: LibraryDb, limit = 30): Promise<readonly ListedSheet[]> {
  return db
    .selectFrom('sheet')
    .select(['sheet.id', 'sheet.title', 'sheet.text', 'sheet.lines'])
    .select(({ selectFrom }) =>
      selectFrom('take')
        .select(({ fn }) => fn.max('take.recordedAt').as('lastAt'))
        .whereRef('take.sheetId', '=', 'sheet.id')
        .as('lastAt'),
    )
    .orderBy('lastAt', 'desc')
    .orderBy('sheet.id')
    .limit(limit)
    .execute();
}
