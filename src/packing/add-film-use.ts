import type { Instant } from '../platform/clock.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Refusal } from '../platform/refusal.js';
import { refuseCountThatDoesNotFit } from './count-neighbours.js';
import { recordCount } from './count-packs.js';
import { FilmUse } from './film-use.entity.js';
import type { FilmLotRow, RunRow } from './packing-run-rows.js';
import { filmRangesOfRuns } from './packing-runs.js';

/** From which pack on a run uses a film lot; `wasRead`: the counter was read for it. */
export interface FilmUseDraft {
  readonly run: RunRow;
  readonly lot: FilmLotRow;
  readonly firstPack: number;
  readonly wasRead: boolean;
  readonly fittedAt: Instant;
}

export interface FilmAnswer {
  readonly id: string;
  readonly runId: string;
  readonly filmLotId: string;
  readonly code: string;
  readonly firstPack: number;
  readonly fittedAt: Instant;
}

/** @throws {Refusal} `count-goes-back`, `film-fitted-already` */
export async function addFilmUse(tx: Tx, nextId: () => string, draft: FilmUseDraft): Promise<FilmAnswer> {
  const { run, lot, firstPack, fittedAt } = draft;
  await refuseCountThatDoesNotFit(tx, { runId: run.id, packCount: firstPack, at: fittedAt });
  const before = (await filmRangesOfRuns(tx, [run.id])).findLast(
    (range) => range.kind === lot.kind && range.fittedAt <= fittedAt,
  );
  if (before?.filmLotId === lot.id) {
    throw new Refusal('film-fitted-already', { code: lot.code, fittedAt: before.fittedAt });
  }
  const id = nextId();
  await tx.insert(FilmUse, { id, runId: run.id, filmLotId: lot.id, firstPack, fittedAt });
  if (draft.wasRead) {
    const count = { id: nextId(), runId: run.id, packCount: firstPack, countedAt: fittedAt };
    await recordCount(tx, { ...count, occasion: 'film-change' });
  }
  return { id, runId: run.id, filmLotId: lot.id, code: lot.code, firstPack, fittedAt };
}
