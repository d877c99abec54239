import { FORMAT_VERSION } from '../../schema/book.ts';
import { from0 } from './from-0.ts';
import { from1 } from './from-1.ts';
import { from2 } from './from-2.ts';
import type { JsonObject, Migration } from './migration.ts';

/** The migrations in order, without gaps: the one at index n reads version n and gives version n + 1. */
export const MIGRATIONS: readonly Migration[] = [from0, from1, from2];

/** Brings a book of an older version up to the newest, one version after the other. */
export function migrate(book: JsonObject, version: number): JsonObject {
  const migrated = MIGRATIONS.slice(version).reduce((older, migration) => migration(older), book);
  return { ...migrated, version: FORMAT_VERSION };
}
