import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Asked } from '../src/journal/entry-draft.js';
import { roles } from '../src/platform/actor.js';
import { readConfig } from '../src/platform/config.js';
import { READER, type ReadFrom } from '../src/platform/database/reading.js';
import { buildHouse, openGround } from '../src/start-house.js';
import { clockAfter } from '../src/demo/demo-clock.js';
import type { DemoTruth } from '../src/demo/truth.js';
import { checkPointsAt, CheckVehicle } from '../src/dispatch/check-vehicle.js';
import type { CheckVehicleForm } from '../src/dispatch/delivery.form.js';
import { LoadPallet } from '../src/dispatch/load-pallet.js';
import { PlanDelivery } from '../src/dispatch/plan-delivery.js';
import { TipBag } from '../src/hopper/tip-bag.js';
import { Refusal } from '../src/platform/refusal.js';
import { bagsToTip, type Bench } from './bags-to-tip.js';
import { replay } from './floor.js';
import { recordStatements, type Statement } from './statement-log.js';

/** One durable write measured against its floor. */
export interface WriteFigure {
  readonly name: string;
  readonly count: number;
  readonly perSecond: number;
  readonly floorPerSecond: number;
  readonly ratio: number;
}

/** Writes per second of *tip* and *load* on a copy of the demo's plant, each beside the bare driver's. */
export async function benchWrites(plantFolder: string, truth: DemoTruth, count: number): Promise<WriteFigure[]> {
  const folder = mkdtempSync(join(tmpdir(), 'packthread-bench-'));
  cpSync(plantFolder, folder, { recursive: true });
  const config = readConfig({ DATA_FOLDER: folder, LOG_LEVEL: 'silent' });
  const databases = await openGround(config);
  const house = await buildHouse(config, databases, { clock: clockAfter(truth.endsAt) });
  let keys = 0;
  const asked = (): Asked => {
    keys += 1;
    const actor = { siteId: truth.siteId, personId: null, deviceId: 'bench', roles: [...roles] };
    return { actor, route: 'bench', key: `bench-key-${keys}` };
  };
  const bench: Bench = {
    get: (kind) => house.get(kind as never, { strict: false }),
    from: house.get<ReadFrom>(READER, { strict: false }),
    asked,
  };
  const measure = async (name: string, acts: readonly (() => Promise<unknown>)[]): Promise<WriteFigure> => {
    const copy = join(folder, `${name}.sqlite`);
    await databases.writer.query('PRAGMA wal_checkpoint(TRUNCATE)');
    cpSync(join(folder, 'packthread.sqlite'), copy);
    const log = recordStatements(databases.writer);
    const kept: Statement[] = [];
    let [done, taken] = [0, 0];
    for (const act of acts) {
      log.statements.length = 0;
      const begun = performance.now();
      if (!(await isDone(act))) continue;
      taken += performance.now() - begun;
      done += 1;
      kept.push(...log.statements);
    }
    log.stop();
    const floor = replay(copy, kept);
    return {
      name,
      count: done,
      perSecond: (done * 1000) / taken,
      floorPerSecond: (done * 1000) / floor,
      ratio: taken / floor,
    };
  };
  try {
    const tips = await measure('tip', await tipActs(bench, count));
    const loads = await measure('load', await loadActs(bench, count));
    return [tips, loads];
  } finally {
    await house.close();
    await databases.close();
    rmSync(folder, { recursive: true });
  }
}

/** A pallet of the demo may be held or waiting: such a refusal is no write and is not counted. */
async function isDone(act: () => Promise<unknown>): Promise<boolean> {
  try {
    await act();
    return true;
  } catch (error) {
    if (error instanceof Refusal) return false;
    throw error;
  }
}

async function tipActs(bench: Bench, count: number): Promise<(() => Promise<unknown>)[]> {
  const { bags, hopperId } = await bagsToTip(bench, count);
  return bags.map(
    (bag) => () => bench.get(TipBag).execute(bench.asked(), { bag, hopperId, isOff: true, happened: true }),
  );
}

async function loadActs(bench: Bench, count: number): Promise<(() => Promise<unknown>)[]> {
  const pallets = await bench.from.sql<{ sscc: string; formatId: string; packCount: number }>`
    SELECT p."sscc", p."format_id" AS "formatId", p."pack_count" AS "packCount" FROM "pallet" p
    JOIN "pallet_state" s ON s."pallet_id" = p."id" WHERE s."status" = 'in-store' ORDER BY p."id" LIMIT ${count}`;
  const [customer] = await bench.from.sql<{ id: string }>`SELECT "id" FROM "customer" LIMIT 1`;
  const lines = [...new Set(pallets.map((pallet) => pallet.formatId))].map((formatId) => ({
    formatId,
    orderedCount: 1_000_000,
  }));
  const delivery = await bench.get(PlanDelivery).execute(bench.asked(), {
    customerId: customer?.id ?? '',
    orderNumber: 'BENCH-1',
    plannedOn: '2030-01-01',
    lines,
  });
  await bench
    .get(CheckVehicle)
    .execute(bench.asked(), delivery.id, await cleanVehicle(bench.from, bench.asked().actor.siteId));
  return pallets.map(
    (pallet) => () => bench.get(LoadPallet).execute(bench.asked(), delivery.id, { pallet: pallet.sscc }),
  );
}

async function cleanVehicle(from: ReadFrom, siteId: string): Promise<CheckVehicleForm> {
  const points = await checkPointsAt(from, siteId, '2030-01-01T00:00:00.000Z');
  const answers = points.map(({ code }) => ({ point: code, isFine: true }));
  return { registration: 'AQ BN 1', haulierCode: 'BENCH', answers };
}
