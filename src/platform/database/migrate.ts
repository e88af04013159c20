import type { Databases } from './databases.js';

/** Any number that nobody else locks: two servers that start at once migrate one after the other. */
const migrationLock = 952_000_001;

/** Brings the schema up to date. */
export async function migrate({ kind, writer }: Databases): Promise<void> {
  if (kind === 'sqlite') {
    await writer.runMigrations({ transaction: 'each' });
    return;
  }
  const holder = writer.createQueryRunner();
  await holder.query(`SELECT pg_advisory_lock(${migrationLock})`);
  try {
    await writer.runMigrations({ transaction: 'each' });
  } finally {
    await holder.query(`SELECT pg_advisory_unlock(${migrationLock})`);
    await holder.release();
  }
}
