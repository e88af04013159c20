import { existsSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Instant } from '../platform/clock.js';
import type { DemoOptions, DemoPlan } from './life/demo-plan.js';
import type { Lived } from './life/live-through.js';
import { instantOf } from './life/minutes.js';
import type { TruePour } from './life/truth-ledger.js';
import type { DemoHand } from './set-up/demo-hand.js';
import { idIn } from './set-up/demo-hand.js';
import type { DemoDevice } from './set-up/demo-device.js';

/** Packs of a run and what is truly in them, by the ids of the house. */
export interface TruthCell {
  readonly runId: string;
  readonly fromCount: number;
  readonly toCount: number;
  readonly fromAt: Instant;
  readonly untilAt: Instant;
  /** What is printed on each of them; null where they bear more than one minute. */
  readonly printed: string | null;
  /** Grams by the id of the bag. */
  readonly grams: Readonly<Record<string, number>>;
}

export interface TruthPour {
  readonly bagId: string;
  readonly hopperId: string;
  readonly at: Instant;
  readonly grams: number;
  readonly recorded: TruePour['recorded'];
}

export interface TruthPallet {
  readonly palletId: string;
  readonly runId: string;
  readonly fromCount: number;
  readonly toCount: number;
}

/** What truly happened in the demo. It lies beside the database, which knows nothing of it. */
export interface DemoTruth extends DemoOptions {
  readonly siteId: string;
  readonly endsAt: Instant;
  readonly pours: readonly TruthPour[];
  readonly cells: readonly TruthCell[];
  readonly pallets: readonly TruthPallet[];
  /** What lets a browser be a tablet of the demo. Not in a demo that was made before it had any. */
  readonly devices?: readonly DemoDevice[];
}

/** The truth of the days that were played, in the ids that the house gave. */
export function truthOf(plan: DemoPlan, lived: Lived, hand: DemoHand): DemoTruth {
  const { days, seed, size, until } = plan;
  const bagId = (key: string): string => hand.idOf(key.includes('-bin-') ? 'bin' : 'bag', key);
  return {
    ...{ days, seed, size, siteId: hand.plant.siteId, endsAt: instantOf(until) },
    pours: lived.truth.pours.map(({ bag, hopper, fromMinute, grams, recorded }) => {
      const hopperId = idIn(hand.plant.hoppers, hopper);
      return { bagId: bagId(bag), hopperId, at: instantOf(fromMinute), grams, recorded };
    }),
    cells: lived.truth.cells.map(({ run, fromCount, toCount, fromMinute, untilMinute, printed, grams }) => ({
      ...{ runId: hand.idOf('run', run), fromCount, toCount, printed },
      ...{ fromAt: instantOf(fromMinute), untilAt: instantOf(untilMinute) },
      grams: Object.fromEntries(Object.entries(grams).map(([key, part]) => [bagId(key), part])),
    })),
    pallets: builtPallets(lived, hand),
    devices: hand.devices,
  };
}

function builtPallets(lived: Lived, hand: DemoHand): readonly TruthPallet[] {
  const known = new Map(hand.allOf('pallet'));
  return lived.acts.flatMap(({ act }) => {
    if (act.kind !== 'build-pallet') return [];
    const palletId = known.get(act.pallet);
    if (palletId === undefined) return [];
    return act.ranges.map(({ run, ...range }) => ({ palletId, runId: hand.idOf('run', run), ...range }));
  });
}

/** Grams of each bag in a range of packs: exact where the range begins and ends with cells of the truth. */
export function trueGramsIn(
  truth: DemoTruth,
  range: { readonly runId: string; readonly fromCount: number; readonly toCount: number },
): ReadonlyMap<string, number> {
  const grams = new Map<string, number>();
  for (const cell of truth.cells) {
    if (cell.runId !== range.runId || cell.toCount <= range.fromCount || cell.fromCount >= range.toCount) continue;
    if (cell.fromCount < range.fromCount || cell.toCount > range.toCount) {
      throw new RangeError(`Packs ${range.fromCount} to ${range.toCount} cut a cell of the truth`);
    }
    for (const [bagId, part] of Object.entries(cell.grams)) grams.set(bagId, (grams.get(bagId) ?? 0) + part);
  }
  return grams;
}

const fileName = 'demo-truth.json';

/** Writes the truth whole or not at all: its being there says that the demo is complete. */
export function writeTruth(folder: string, truth: DemoTruth): void {
  const draft = join(folder, `${fileName}.part`);
  writeFileSync(draft, JSON.stringify(truth));
  renameSync(draft, join(folder, fileName));
}

export function readTruth(folder: string): DemoTruth | null {
  const path = join(folder, fileName);
  return existsSync(path) ? (JSON.parse(readFileSync(path, 'utf8')) as DemoTruth) : null;
}

export const truthFileName = fileName;
