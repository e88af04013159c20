import { join } from 'node:path';
import Database from 'better-sqlite3';
import { readConfig } from '../src/platform/config.js';
import { HeavyReads } from '../src/platform/database/heavy-reads.js';
import type { ReadFrom } from '../src/platform/database/reading.js';
import { openGround } from '../src/start-house.js';
import type { DemoTruth } from '../src/demo/truth.js';
import { findSubjects } from '../src/desks/find-subjects.js';
import { readThread } from '../src/tracing/read-thread.js';
import { quantile } from './floor.js';
import type { Statement } from './statement-log.js';

/** Latency of a kind of thread, beside the bare driver's for the same statements. */
export interface ThreadFigure {
  readonly name: string;
  readonly count: number;
  readonly medianMilliseconds: number;
  readonly p95Milliseconds: number;
  readonly floorMedianMilliseconds: number;
  readonly ratio: number;
}

/** Threads of pack codes, bags and pallets spread over the whole time of the demo, as the search box asks for them. */
export async function benchThreads(plantFolder: string, truth: DemoTruth, count: number): Promise<ThreadFigure[]> {
  const databases = await openGround(readConfig({ DATA_FOLDER: plantFolder, LOG_LEVEL: 'silent' }));
  const heavy = new HeavyReads(databases);
  const bare = new Database(join(plantFolder, 'packthread.sqlite'), { readonly: true });
  try {
    const codes = await codesOf(databases.reader.manager, truth, count);
    const figures: ThreadFigure[] = [];
    for (const [name, typed] of Object.entries(codes)) {
      const times: number[] = [];
      const floors: number[] = [];
      for (const code of typed) {
        const statements: Statement[] = [];
        const begun = performance.now();
        await heavy.snapshot((from) => threadOf(recording(from, statements), truth, code));
        times.push(performance.now() - begun);
        floors.push(bareTime(bare, statements));
      }
      const [median, floor] = [quantile(times, 0.5), quantile(floors, 0.5)];
      figures.push({
        name,
        count: times.length,
        medianMilliseconds: median,
        p95Milliseconds: quantile(times, 0.95),
        floorMedianMilliseconds: floor,
        ratio: median / floor,
      });
    }
    return figures;
  } finally {
    bare.close();
    await heavy.beforeApplicationShutdown();
    await databases.close();
  }
}

async function threadOf(from: ReadFrom, truth: DemoTruth, code: string): Promise<void> {
  const asked = { code, localTime: null, now: truth.endsAt };
  const [found] = await findSubjects(from, truth.siteId, asked);
  if (found === undefined) throw new Error(`nothing carries ${code}`);
  await readThread(from, truth.siteId, found.subject, truth.endsAt);
}

/** Passes statements on and writes them down as SQLite takes them. */
export function recording(from: ReadFrom, statements: Statement[]): ReadFrom {
  return {
    sql: <Row>(strings: TemplateStringsArray, ...values: unknown[]) => {
      const parameters: unknown[] = [];
      const place = (value: unknown): string => {
        if (value === null) return 'NULL';
        if (typeof value === 'function') {
          const made: unknown = (value as () => unknown)();
          return typeof made === 'string' ? made : (made as unknown[]).map((item) => place(item)).join(', ');
        }
        parameters.push(typeof value === 'boolean' ? Number(value) : value);
        return '?';
      };
      const sql = strings.reduce((text, part, at) => text + part + (at < values.length ? place(values[at]) : ''), '');
      statements.push({ sql, parameters });
      return from.sql<Row>(strings, ...values);
    },
  };
}

function bareTime(bare: Database.Database, statements: readonly Statement[]): number {
  const prepared = new Map<string, Database.Statement>();
  const begun = performance.now();
  for (const { sql, parameters } of statements) {
    const statement = prepared.get(sql) ?? bare.prepare(sql);
    prepared.set(sql, statement);
    statement.all(...parameters);
  }
  return performance.now() - begun;
}

async function codesOf(from: ReadFrom, truth: DemoTruth, count: number): Promise<Record<string, string[]>> {
  const printed = truth.cells.flatMap((cell) => cell.printed ?? []);
  const bags = await from.sql<{ code: string }>`
    SELECT b."number" AS "code" FROM "bulk_bag" b JOIN "tip" t ON t."bag_id" = b."id" AND t."voided_by" IS NULL ORDER BY b."id"`;
  const pallets = await from.sql<{ code: string }>`SELECT "sscc" AS "code" FROM "pallet" ORDER BY "id"`;
  return {
    'pack code with its time': spread(printed, count),
    'bulk bag': spread(
      bags.map((row) => row.code),
      count,
    ),
    pallet: spread(
      pallets.map((row) => row.code),
      count,
    ),
  };
}

/** So many of a list, evenly over it. */
function spread<Item>(items: readonly Item[], count: number): Item[] {
  return Array.from({ length: Math.min(count, items.length) }, (_, place) => {
    return items[Math.floor(((place + 0.5) * items.length) / Math.min(count, items.length))];
  }).filter((item): item is Item => item !== undefined);
}
