import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { QueryRunner } from 'typeorm';
import { missingGuards } from '../src/platform/database/check-databases.js';
import { openDatabases } from '../src/platform/database/databases.js';
import { readConfig } from '../src/platform/config.js';
import { takeNumber } from '../src/platform/database/number-series.js';
import { UnitOfWork } from '../src/platform/database/unit-of-work.js';
import { openGround } from '../src/start-house.js';
import { factTables, plantRow } from './support/facts.js';
import { settingsOf } from './support/first-sign-in.js';
import { freshPlace, openHouse, type TestHouse } from './support/house.js';

describe('the ground of the house', () => {
  let house: TestHouse;
  let units: UnitOfWork;

  beforeAll(async () => {
    house = await openHouse();
    units = house.get(UnitOfWork);
  });
  afterAll(async () => {
    await house.close();
  });

  it('makes the schema that the entities describe, with nothing left to change', async () => {
    const log = await house.databases.writer.driver.createSchemaBuilder().log();
    expect(log.upQueries.map((query) => query.query)).toEqual([]);
  });

  it('carries every guard of every fact table', async () => {
    expect(await missingGuards(house.databases)).toEqual([]);
    expect(factTables(house.databases).length).toBeGreaterThan(50);
  });

  it('writes durably: full synchronisation, a write-ahead log, foreign keys and triggers that see a replaced row', async () => {
    const place = await freshPlace();
    const databases = await openGround(readConfig(settingsOf(place)));
    const pragma = async (name: string): Promise<unknown> =>
      Object.values((await databases.writer.query<Record<string, unknown>[]>(`PRAGMA ${name}`))[0] ?? {})[0];
    try {
      if (databases.kind === 'postgres') {
        const [row] = await databases.writer.sql<{ fsync: string; commit: string }[]>`
          SELECT current_setting('fsync') AS "fsync", current_setting('synchronous_commit') AS "commit"`;
        expect(row).toEqual({ fsync: 'on', commit: 'on' });
        return;
      }
      expect(await pragma('synchronous')).toBe(2);
      expect(await pragma('journal_mode')).toBe('wal');
      expect(await pragma('foreign_keys')).toBe(1);
      expect(await pragma('recursive_triggers')).toBe(1);
    } finally {
      await databases.close();
      await place.remove();
    }
  });

  it('does not let the reader write', async () => {
    const write = house.databases.reader.sql`DELETE FROM "idempotency_key"`;
    await expect(write).rejects.toThrow(/readonly|read-only/);
  });

  it('refuses a unit inside a unit, and a statement after its unit has ended', async () => {
    await expect(units.run(() => units.run(async () => 1))).rejects.toThrow('inside another');
    const late = await units.run(async (tx) => async () => tx.sql`SELECT 1 AS "one"`);
    await expect(late()).rejects.toThrow('an await is missing');
  });

  it('keeps 200 units that overlap apart: what was told is there, what failed left nothing', async () => {
    const outcomes = await Promise.allSettled(
      Array.from({ length: 200 }, (_, place) =>
        units.run(async (tx) => {
          const number = await takeNumber(tx, 'site-1', 'overlap');
          if (place % 3 === 0) throw new Error('this one fails');
          return number;
        }),
      ),
    );
    const told = outcomes.flatMap((outcome) => (outcome.status === 'fulfilled' ? [outcome.value] : []));
    expect(told.sort((a, b) => a - b)).toEqual(Array.from({ length: told.length }, (_, place) => place + 1));
    expect(told).toHaveLength(133);
  });

  it('keeps a second server away from the same data folder', async () => {
    if (house.databases.kind === 'postgres') return;
    const second = openDatabases({ ...house.config, databaseUrl: null, entities: [], migrations: [] });
    await expect(second).rejects.toThrow('Another Packthread server');
  });
});

describe('facts, tried past the house by plain statements', () => {
  let house: TestHouse;
  let runner: QueryRunner;

  beforeAll(async () => {
    house = await openHouse();
    runner = house.databases.writer.createQueryRunner();
    if (house.databases.kind === 'sqlite') await runner.query('PRAGMA foreign_keys = OFF');
  });
  afterAll(async () => {
    await house.close();
  });

  it('cannot be changed, deleted, replaced or truncated in any fact table, and voided only once', async () => {
    const { databases } = house;
    const tables = factTables(databases);
    for (const { table } of tables) {
      if (databases.kind === 'postgres') await dropForeignKeys(runner, table);
      await plantRow(databases, table);
    }
    const slipped: string[] = [];
    const mustFail = async (statement: string): Promise<void> => {
      try {
        await runner.query(statement);
        slipped.push(statement);
      } catch (error) {
        expect(String(error)).toMatch(/fact:/);
      }
    };
    for (const { table, isVoidable, keys } of tables) {
      const [key] = keys as [string];
      await mustFail(`UPDATE "${table}" SET "${key}" = "${key}"`);
      await mustFail(`DELETE FROM "${table}"`);
      if (databases.kind === 'sqlite') {
        await mustFail(`INSERT OR REPLACE INTO "${table}" SELECT * FROM "${table}"`);
        await mustFail(`REPLACE INTO "${table}" SELECT * FROM "${table}"`);
      } else {
        await mustFail(`TRUNCATE "${table}" CASCADE`);
      }
      if (isVoidable) {
        await runner.query(`UPDATE "${table}" SET "voided_by" = 'entry-1'`);
        await mustFail(`UPDATE "${table}" SET "voided_by" = 'entry-2'`);
        await mustFail(`UPDATE "${table}" SET "voided_by" = NULL`);
      }
    }
    expect(slipped).toEqual([]);
  });
});

async function dropForeignKeys(runner: QueryRunner, table: string): Promise<void> {
  const rows = (await runner.query(
    `SELECT conname AS name FROM pg_constraint WHERE contype = 'f' AND conrelid = '"${table}"'::regclass`,
  )) as { name: string }[];
  for (const { name } of rows) await runner.query(`ALTER TABLE "${table}" DROP CONSTRAINT "${name}"`);
}
