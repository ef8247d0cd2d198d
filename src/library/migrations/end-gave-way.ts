import type { Migration } from './migration.ts';

/** Null in rows that are older: their results tell it. */
export const endGaveWay: Migration = {
  title: 'whether the end of a take gave way, beside its scores',
  statements: ['alter table take add column endGaveWay integer check (endGaveWay in (0, 1))'],
};
