import { endGaveWay } from './end-gave-way.ts';
import { firstSchema } from './first-schema.ts';
import type { Migration } from './migration.ts';

/** All steps, oldest first: a library's version is how many of them it has been through. New ones go to the end. */
export const migrations: readonly Migration[] = [firstSchema, endGaveWay];
