import { Injectable, type OnModuleInit } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { siteOf } from '../plant/plant-facts.js';
import { toWhole } from '../platform/database/stored-values.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { Ids } from '../platform/ids.js';
import { issuePaper } from '../platform/printing/issue-paper.js';
import { PaperRenderers } from '../platform/printing/paper-renderers.js';
import { Refusal } from '../platform/refusal.js';
import { printedTime } from '../platform/printing/printed-figures.js';
import { lotDates } from './lot-dates.js';
import type { PrintLotLabelForm } from './lot.form.js';
import { lotLabel, lotLabelEdition, lotLabelKind, type LotLabelFacts } from './lot.label.js';
import type { LotRow } from './packing-run-rows.js';
import { rangesOfLot, runOf } from './packing-runs.js';
import { readLotOfSite } from './run-lists.js';

export interface LotLabelAnswer {
  readonly paperId: string;
  readonly copyNumber: number;
}

/**
 * A card for a lot is given out. A second one says that it is a copy, and why it was needed.
 * Refusals: `lot-on-no-pack`, `lot-label-printed-already`.
 */
@Injectable()
export class PrintLotLabel implements OnModuleInit {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
    private readonly renderers: PaperRenderers,
  ) {}

  onModuleInit(): void {
    this.renderers.add(lotLabelKind, lotLabelEdition, (facts, issuedAt) => lotLabel(facts as LotLabelFacts, issuedAt));
  }

  execute(asked: Asked, lotId: string, form: PrintLotLabelForm): Promise<LotLabelAnswer> {
    return this.changes.run(asked, { lotId, ...form }, async (tx, change) => {
      const lot = await readLotOfSite(tx, asked.actor.siteId, lotId);
      const copyNumber = (await labelCount(tx, lot.id)) + 1;
      const reason = form.reason ?? null;
      if (copyNumber > 1 && reason === null) {
        throw new Refusal('lot-label-printed-already', { lot: lot.code, copies: copyNumber - 1 });
      }
      const paperId = this.ids.next();
      await issuePaper(tx, {
        id: paperId,
        jobId: this.ids.next(),
        siteId: lot.siteId,
        kind: lotLabelKind,
        edition: lotLabelEdition,
        number: null,
        subject: { kind: 'lot', id: lot.id },
        facts: { ...(await labelFacts(tx, lot, copyNumber)) },
        issuedAt: change.recordedAt,
        personId: asked.actor.personId,
      });
      return {
        answer: { paperId, copyNumber },
        entry: {
          action: 'print-lot-label',
          subject: { kind: 'lot', id: lot.id },
          touches: [{ kind: 'paper', id: paperId }],
          after: { paperId, copyNumber },
          reason,
        },
      };
    });
  }
}

async function labelCount(from: ReadFrom, lotId: string): Promise<number> {
  const [row] = await from.sql<{ printed: number | string }>`
    SELECT COUNT(*) AS "printed" FROM "paper"
    WHERE "subject_kind" = 'lot' AND "subject_id" = ${lotId} AND "kind" = ${lotLabelKind} AND "voided_by" IS NULL`;
  return toWhole(row?.printed ?? 0);
}

async function labelFacts(from: ReadFrom, lot: LotRow, copyNumber: number): Promise<LotLabelFacts> {
  const dates = await lotDates(from, lot);
  if (dates === null) throw new Refusal('lot-on-no-pack', { lot: lot.code });
  const site = await siteOf(from, lot.siteId);
  const language = site.paperLanguage;
  const runs = [];
  for (const runId of new Set((await rangesOfLot(from, lot.id)).map((range) => range.runId))) {
    runs.push(await runOf(from, runId));
  }
  return {
    language,
    siteName: site.name,
    code: lot.code,
    gtin: lot.gtin,
    productName: lot.formatName,
    bestBeforeOn: dates.bestBeforeOn,
    productionOn: dates.productionOn,
    shiftCode: dates.shiftCode,
    firstPackedAtText: printedTime(dates.firstPackedAt, site.timeZone, language),
    lineNames: [...new Set(runs.map((run) => run.lineName))],
    runNumbers: runs.map((run) => run.number),
    copyNumber,
  };
}
