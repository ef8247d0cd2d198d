import Schema from 'typebox/schema';
import { type FolderTake, folderResultSchema } from './folder-result.ts';

/** Whether a value read from a file is a take of a folder's result. */
export function isFolderTake(value: unknown): value is FolderTake {
  return Schema.Check(folderResultSchema.properties.takes.items, value);
}
