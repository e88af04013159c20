import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { Refusal } from '../platform/refusal.js';
import { addFilmUse, type FilmAnswer } from './add-film-use.js';
import type { FitFilmForm } from './packing-run.form.js';
import type { FilmLotRow } from './packing-run-rows.js';
import { filmCode, findFilmLots } from './packing-runs.js';
import { countWithoutReading, takeRunAt, type RunAt } from './run-at.js';

/**
 * Film, preprinted bags, labels or glue of a lot are on the machine from a pack on.
 * Refusals: `film-lot-unknown` (give kind and supplier to register it), `film-lot-of-other-kind`, `film-fitted-already`,
 * `run-is-closed`, `before-run-start`, `count-needed`, `count-goes-back`, those of the time.
 */
@Injectable()
export class FitFilm {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, run: string, form: FitFilmForm): Promise<FilmAnswer> {
    return this.changes.run(asked, { run, ...form }, async (tx, change) => {
      const taken = await takeRunAt(tx, change, {
        asked,
        run,
        statedAt: form.fittedAt ?? null,
        lateReason: form.reason ?? null,
      });
      const lot = await this.lotOf(tx, taken, form);
      const stated = form.packCount ?? null;
      const answer = await addFilmUse(tx, () => this.ids.next(), {
        run: taken.run,
        lot,
        firstPack: stated ?? (await countWithoutReading(tx, taken.run, taken.occurredAt)),
        wasRead: stated !== null,
        fittedAt: taken.occurredAt,
      });
      return {
        answer,
        entry: {
          action: 'fit-film',
          subject: { kind: 'packing-run', id: taken.run.id },
          touches: [{ kind: 'film-lot', id: lot.id }],
          after: { ...answer },
          reason: taken.reason,
          occurredAt: taken.occurredAt,
          statedAt: taken.statedAt,
        },
      };
    });
  }

  private async lotOf(tx: Tx, { run }: RunAt, form: FitFilmForm): Promise<FilmLotRow> {
    const [known] = await findFilmLots(tx, run.siteId, form.film);
    const kind = form.kind ?? null;
    if (known !== undefined) {
      if (kind === null || kind === known.kind) return known;
      throw new Refusal('film-lot-of-other-kind', { code: known.code, known: known.kind, kind });
    }
    const supplierCode = form.supplierCode ?? null;
    if (kind === null || supplierCode === null) throw new Refusal('film-lot-unknown', { code: filmCode(form.film) });
    await tx.sql`
      INSERT INTO "film_lot" ("id", "site_id", "code", "supplier_code", "kind")
      VALUES (${this.ids.next()}, ${run.siteId}, ${filmCode(form.film)}, ${supplierCode}, ${kind})
      ON CONFLICT DO NOTHING`;
    const [made] = await findFilmLots(tx, run.siteId, form.film);
    if (made === undefined) throw new Error(`film lot ${form.film} was neither found nor made`);
    return made;
  }
}
