import type { DatabaseKind } from './database-kind.js';

/** A table of facts: which columns never change, and which sets of columns are unique (with their condition). */
export interface GuardedTable {
  readonly table: string;
  readonly columns: readonly string[];
  readonly voidable: boolean;
  readonly keys: readonly { readonly columns: readonly string[]; readonly where?: string }[];
}

/**
 * The triggers that make the database itself refuse a change of a fact: UPDATE (but for `voided_by`, once), DELETE,
 * on SQLite the INSERT of an existing key (REPLACE slips past the first two), on PostgreSQL TRUNCATE.
 */
export function factGuards(kind: DatabaseKind, guarded: GuardedTable): readonly string[] {
  return kind === 'sqlite' ? sqliteGuards(guarded) : postgresGuards(guarded);
}

/** A column that a later migration added to a guarded table: it gets a guard of its own against UPDATE. */
export function columnGuards(
  kind: DatabaseKind,
  { table, column }: { readonly table: string; readonly column: string },
): readonly string[] {
  const begin = `CREATE TRIGGER "${table}_no_update_${column}" BEFORE UPDATE OF "${column}" ON "${table}"`;
  return kind === 'sqlite'
    ? [`${begin} BEGIN SELECT RAISE(ABORT, 'fact:${table}: rows are never changed'); END`]
    : [`${begin} FOR EACH ROW EXECUTE FUNCTION packthread_refuse_change()`];
}

/** The names of the triggers that a guarded table carries. */
export function guardNames(kind: DatabaseKind, table: string, voidable: boolean): readonly string[] {
  const endings = ['no_update', 'no_delete', kind === 'sqlite' ? 'no_replace' : 'no_truncate'];
  return [...endings, ...(voidable ? ['void_once'] : [])].map((ending) => `${table}_${ending}`);
}

function sqliteGuards({ table, columns, voidable, keys }: GuardedTable): string[] {
  const fixed = columns.filter((column) => column !== 'voided_by').map((column) => `"${column}"`);
  const refuse = (why: string): string => `BEGIN SELECT RAISE(ABORT, 'fact:${table}: ${why}'); END`;
  const taken = keys.map(
    (key) =>
      `EXISTS (SELECT 1 FROM "${table}" WHERE ${key.columns.map((c) => `"${c}" = NEW."${c}"`).join(' AND ')}${key.where === undefined ? '' : ` AND ${key.where}`})`,
  );
  const statements = [
    `CREATE TRIGGER "${table}_no_update" BEFORE UPDATE OF ${fixed.join(', ')} ON "${table}" ${refuse('rows are never changed')}`,
    `CREATE TRIGGER "${table}_no_delete" BEFORE DELETE ON "${table}" ${refuse('rows are never deleted')}`,
    `CREATE TRIGGER "${table}_no_replace" BEFORE INSERT ON "${table}" WHEN ${taken.join(' OR ')} BEGIN SELECT RAISE(ABORT, 'UNIQUE fact:${table}: the key is taken'); END`,
  ];
  if (voidable) {
    statements.push(
      `CREATE TRIGGER "${table}_void_once" BEFORE UPDATE OF "voided_by" ON "${table}" WHEN OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL ${refuse('voided_by is set once')}`,
    );
  }
  return statements;
}

function postgresGuards({ table, columns, voidable }: GuardedTable): string[] {
  const fixed = columns.filter((column) => column !== 'voided_by').map((column) => `"${column}"`);
  const refuse = `EXECUTE FUNCTION packthread_refuse_change()`;
  const statements = [
    `CREATE TRIGGER "${table}_no_update" BEFORE UPDATE OF ${fixed.join(', ')} ON "${table}" FOR EACH ROW ${refuse}`,
    `CREATE TRIGGER "${table}_no_delete" BEFORE DELETE ON "${table}" FOR EACH ROW ${refuse}`,
    `CREATE TRIGGER "${table}_no_truncate" BEFORE TRUNCATE ON "${table}" FOR EACH STATEMENT ${refuse}`,
  ];
  if (voidable) {
    statements.push(
      `CREATE TRIGGER "${table}_void_once" BEFORE UPDATE OF "voided_by" ON "${table}" FOR EACH ROW WHEN (OLD."voided_by" IS NOT NULL OR NEW."voided_by" IS NULL) ${refuse}`,
    );
  }
  return statements;
}

/** The function that PostgreSQL's guards call; SQLite's refuse by themselves. */
export function refuseFunction(kind: DatabaseKind): readonly string[] {
  if (kind === 'sqlite') return [];
  return [
    `CREATE FUNCTION packthread_refuse_change() RETURNS trigger LANGUAGE plpgsql AS $$
     BEGIN RAISE EXCEPTION 'fact:%: % is refused, facts are never changed', TG_TABLE_NAME, TG_OP; END $$`,
  ];
}
