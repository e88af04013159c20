import { Injectable, type OnModuleInit } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { gradeOf, scaleStandingAt, siteOf } from '../plant/plant-facts.js';
import { toWhole } from '../platform/database/stored-values.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { Ids } from '../platform/ids.js';
import { issuePaper } from '../platform/printing/issue-paper.js';
import { PaperRenderers } from '../platform/printing/paper-renderers.js';
import { Refusal } from '../platform/refusal.js';
import { printedTime } from '../platform/printing/printed-figures.js';
import type { Language } from '../platform/sentences/language.js';
import { say } from '../platform/sentences/sentences.js';
import type { PrintBagLabelForm } from './bag.form.js';
import { bagLabelEdition, renderBagLabel, type BagLabelFacts } from './bulk-bag.label.js';
import { findBag, type BagRow } from './bulk-bags.js';
import { dryerRunOf } from './dryer-runs.js';
import { receiptOf } from './goods-receipts.js';

/**
 * A label for a bag is given out. A second one says that it is a copy, and why it was needed; the number stays.
 * Refusals: `bag-not-closed`, `label-printed-already`; not found: bulk-bag.
 */
@Injectable()
export class PrintBagLabel implements OnModuleInit {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
    private readonly renderers: PaperRenderers,
  ) {}

  onModuleInit(): void {
    this.renderers.add('bag-label', bagLabelEdition, (facts, issuedAt) =>
      renderBagLabel(facts as BagLabelFacts, issuedAt),
    );
  }

  execute(asked: Asked, form: PrintBagLabelForm): Promise<{ paperId: string; copyNumber: number }> {
    return this.changes.run(asked, form, async (tx, change) => {
      const bag = await findBag(tx, asked.actor.siteId, form.bag);
      const copyNumber = (await labelCount(tx, bag.id)) + 1;
      const reason = form.reason ?? null;
      if (copyNumber > 1 && reason === null) {
        throw new Refusal('label-printed-already', { bag: bag.number, copies: copyNumber - 1 });
      }
      const facts = await labelFacts(tx, bag, copyNumber);
      const paperId = this.ids.next();
      await issuePaper(tx, {
        id: paperId,
        jobId: this.ids.next(),
        siteId: bag.siteId,
        kind: 'bag-label',
        edition: bagLabelEdition,
        number: null,
        subject: { kind: 'bulk-bag', id: bag.id },
        facts: { ...facts },
        issuedAt: change.recordedAt,
        personId: asked.actor.personId,
      });
      return {
        answer: { paperId, copyNumber },
        entry: {
          action: 'print-bag-label',
          subject: { kind: 'bulk-bag', id: bag.id },
          touches: [{ kind: 'paper', id: paperId }],
          after: { paperId, copyNumber },
          reason,
        },
      };
    });
  }
}

async function labelCount(from: ReadFrom, bagId: string): Promise<number> {
  const [row] = await from.sql<{ printed: number | string }>`
    SELECT COUNT(*) AS "printed" FROM "paper"
    WHERE "subject_kind" = 'bulk-bag' AND "subject_id" = ${bagId} AND "kind" = 'bag-label' AND "voided_by" IS NULL`;
  return toWhole(row?.printed ?? 0);
}

async function labelFacts(from: ReadFrom, bag: BagRow, copyNumber: number): Promise<BagLabelFacts> {
  const { netGrams, grossGrams, tareGrams, scaleId, filledAt } = bag;
  if (netGrams === null || grossGrams === null || tareGrams === null || scaleId === null || filledAt === null) {
    throw new Refusal('bag-not-closed', { bag: bag.number });
  }
  const site = await siteOf(from, bag.siteId);
  const language = site.paperLanguage;
  const grade = await gradeOf(from, bag.intendedGradeId);
  const { scale } = await scaleStandingAt(from, scaleId, filledAt);
  return {
    language,
    bagNumber: bag.number,
    sscc: bag.sscc,
    siteName: site.name,
    gradeName: grade.name,
    originText: await originText(from, bag, language),
    netGrams,
    grossGrams,
    tareGrams,
    isPresetTare: bag.isPresetTare,
    isDoubtful: bag.isDoubtful,
    safeLoadGrams: bag.safeLoadGrams,
    scaleCode: scale.code,
    filledAtText: printedTime(filledAt, site.timeZone, language),
    linerLot: bag.linerLot,
    copyNumber,
  };
}

/** Where a bag comes from, in the words of its label. */
async function originText(from: ReadFrom, bag: BagRow, language: Language): Promise<string> {
  if (bag.dryerRunId !== null) {
    const { number } = await dryerRunOf(from, bag.dryerRunId);
    return say('bag-label-of-run', { run: number }, language);
  }
  if (bag.receiptId === null) return say('bag-label-of-opening', {}, language);
  const { supplierLot, supplierCode, number } = await receiptOf(from, bag.siteId, bag.receiptId);
  return say('bag-label-of-receipt', { lot: supplierLot, supplier: supplierCode, receipt: number }, language);
}
