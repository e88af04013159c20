import type { EntityManager, MigrationInterface, QueryRunner } from 'typeorm';
import type { DatabaseKind } from './database-kind.js';
import { columnGuards, factGuards, refuseFunction, type GuardedTable } from './fact-guards.js';

/** A class that TypeORM runs as a migration. */
export type Migration = new () => MigrationInterface;

/**
 * One step: portable SQL (`{bytes}` stands for the database's type of bytes), the guarding of a fact table or of a
 * column that was added to one, the function by which PostgreSQL's guards refuse, or work on rows that SQL alone cannot
 * do, which knows nothing of the house's code, since that changes.
 */
export type MigrationStep =
  | string
  | { readonly guard: GuardedTable }
  | { readonly guardColumn: { readonly table: string; readonly column: string } }
  | { readonly refuseFunction: true }
  | { readonly work: (manager: EntityManager) => Promise<void> };

type StatedStep = Exclude<MigrationStep, { readonly work: unknown }>;

/**
 * One migration of the one history that both databases share. Fact tables are changed by plain ALTER TABLE only:
 * TypeORM's table helpers rebuild a table on SQLite and lose its triggers silently.
 */
export function migration(number: number, name: string, steps: readonly MigrationStep[]): Migration {
  return class implements MigrationInterface {
    readonly name = `${name}${String(1_700_000_000_000 + number)}`;

    async up(runner: QueryRunner): Promise<void> {
      const kind = runner.dataSource.options.type === 'postgres' ? 'postgres' : 'sqlite';
      for (const step of steps) {
        if (typeof step === 'object' && 'work' in step) await step.work(runner.manager);
        else for (const statement of statementsOf(step, kind)) await runner.query(statement);
      }
    }

    async down(): Promise<void> {
      throw new Error('the history of the schema only goes forward; restore a backup instead');
    }
  };
}

function statementsOf(step: StatedStep, kind: DatabaseKind): readonly string[] {
  if (typeof step === 'string') return [step.replaceAll('{bytes}', kind === 'postgres' ? 'bytea' : 'blob')];
  if ('guardColumn' in step) return columnGuards(kind, step.guardColumn);
  return 'guard' in step ? factGuards(kind, step.guard) : refuseFunction(kind);
}
