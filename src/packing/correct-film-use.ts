import { Injectable } from '@nestjs/common';
import { leaveReachJob } from '../open-points/reach-job.js';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { refuseContradiction, voidFact } from '../journal/void-fact.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { BadForm, Refusal } from '../platform/refusal.js';
import { addFilmUse, type FilmAnswer } from './add-film-use.js';
import type { CorrectFilmUseForm } from './correction.form.js';
import { takeFactOnRun } from './fact-on-run.js';
import { FilmUse } from './film-use.entity.js';
import type { FilmLotRow, RunRow } from './packing-run-rows.js';
import { filmCode, filmLotOf, findFilmLots } from './packing-runs.js';
import { voidReading } from './void-reading.js';

export interface CorrectFilmUseAnswer {
  readonly runId: string;
  /** What stands in its place; null: it did not occur. */
  readonly use: FilmAnswer | null;
}

/**
 * A film lot was recorded wrongly, or was never fitted. The count that was read for it goes with it.
 * Refusals: `already-corrected`, `film-lot-unknown`, `film-fitted-already`, `count-goes-back`.
 */
@Injectable()
export class CorrectFilmUse {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, useId: string, form: CorrectFilmUseForm): Promise<CorrectFilmUseAnswer> {
    return this.changes.run(asked, { useId, ...form }, async (tx, change) => {
      refuseContradiction(form);
      const what = { siteId: asked.actor.siteId, kind: 'film-use', id: useId };
      const { fact: old, run } = await takeFactOnRun(tx, FilmUse, what);
      await voidFact(tx, FilmUse, useId, change);
      const { runId, firstPack, fittedAt } = old;
      const reading = { runId, packCount: firstPack, countedAt: fittedAt, occasion: 'film-change' as const };
      const wasRead = await voidReading(tx, reading, change);
      const use = form.why === 'incorrect-data' ? await this.replace(tx, { run, old, wasRead, form }) : null;
      await leaveReachJob(tx, { id: this.ids.next(), siteId: asked.actor.siteId, holdId: null, at: change.recordedAt });
      return {
        answer: { runId, use },
        entry: {
          action: 'correct-film-use',
          subject: { kind: 'packing-run', id: runId },
          touches: [{ kind: 'film-lot', id: old.filmLotId }, ...(use ? [{ kind: 'film-lot', id: use.filmLotId }] : [])],
          before: { id: useId, filmLotId: old.filmLotId, firstPack, fittedAt },
          after: { use: use === null ? null : { ...use }, why: form.why },
          reason: form.reason,
        },
      };
    });
  }

  private async replace(
    tx: Tx,
    { run, old, wasRead, form }: { run: RunRow; old: FilmUse; wasRead: boolean; form: CorrectFilmUseForm },
  ): Promise<FilmAnswer> {
    const [film, packCount] = [form.film ?? null, form.packCount ?? null];
    if (film === null && packCount === null) {
      throw new BadForm([{ field: 'film', code: 'correction-without-change', facts: {} }]);
    }
    return addFilmUse(tx, () => this.ids.next(), {
      run,
      lot: film === null ? await filmLotOf(tx, old.filmLotId) : await knownLot(tx, run, film),
      firstPack: packCount ?? old.firstPack,
      wasRead: wasRead || packCount !== null,
      fittedAt: old.fittedAt,
    });
  }
}

async function knownLot(tx: Tx, run: RunRow, film: string): Promise<FilmLotRow> {
  const [lot] = await findFilmLots(tx, run.siteId, film);
  if (lot === undefined) throw new Refusal('film-lot-unknown', { code: filmCode(film) });
  return lot;
}
