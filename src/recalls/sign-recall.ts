import { Injectable, type OnModuleInit } from '@nestjs/common';
import type { RecallBalance } from '../core/recall-sums/recall-balance.js';
import type { Asked } from '../journal/entry-draft.js';
import { journalHeadOf } from '../journal/journal-entries.js';
import { RecordChange } from '../journal/record-change.js';
import { sha256, type Canonical } from '../platform/canonical-text.js';
import { isTakenKey } from '../platform/database/constraint-errors.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { issuePaper } from '../platform/printing/issue-paper.js';
import { PaperRenderers } from '../platform/printing/paper-renderers.js';
import { Refusal } from '../platform/refusal.js';
import { textOfFigures } from './frozen-figures.js';
import { figuresOfRecall, type RecallFigures } from './recall-figures.js';
import { openRecallOf } from './recall-in-unit.js';
import { linksOfRecall } from './recall-links.js';
import { reportFacts, type ReportDraft } from './recall-report-facts.js';
import { draw, recallReportEdition, recallReportEditions, url } from './recall-report.paper.js';
import { RecallSigning } from './recall-signing.entity.js';
import type { RecallSigned } from './recall.form.js';
import { recallReportKind } from './recalls.js';

export interface RecallSignedAnswer {
  readonly id: string;
  readonly number: string;
  readonly packs: RecallBalance;
  readonly milligrams: RecallBalance;
  readonly journalHead: string;
  readonly paperId: string;
}

/** The hash that stands for a chain without an entry. */
const noHead = '0'.repeat(64);

/**
 * Quality closes a recall and signs its figures as they stand.
 * Refusals: `recall-clock-running`, `recall-needs-explanation`, `recall-signed`; not found: recall.
 */
@Injectable()
export class SignRecall implements OnModuleInit {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
    private readonly renderers: PaperRenderers,
  ) {}

  onModuleInit(): void {
    for (const edition of recallReportEditions) {
      this.renderers.addBeside(recallReportKind, edition, { draw, url });
    }
  }

  execute(asked: Asked, recallId: string, form: RecallSigned): Promise<RecallSignedAnswer> {
    const explanation = form.explanation ?? null;
    return this.changes.run(asked, { recallId, explanation }, async (tx, change) => {
      const { siteId, personId } = asked.actor;
      const recall = await openRecallOf(tx, siteId, recallId);
      const { id, number } = recall;
      const { stoppedAt } = recall;
      if (stoppedAt === null) throw new Refusal('recall-clock-running', { recall: number });
      const figures = await figuresOfRecall(tx, recall);
      if (isOdd(figures) && explanation === null) {
        throw new Refusal('recall-needs-explanation', { recall: number, packs: figures.packs.unaccounted });
      }
      const links = await linksOfRecall(tx, figures);
      const text = textOfFigures(figures, links);
      const journalHead = (await journalHeadOf(tx, siteId)) ?? noHead;
      const signing = { id: this.ids.next(), recallId: id, figures: text, explanation, journalHead };
      await insertSigning(tx, { ...signing, signedBy: personId, signedAt: change.recordedAt, voidedBy: null }, number);
      const { packs, milligrams } = figures;
      const paperId = await this.report(tx, {
        ...{ recall: { ...recall, stoppedAt }, figures, links, explanation, journalHead },
        ...{ signedBy: personId, signedAt: change.recordedAt, contentHash: sha256(text) },
      });
      return {
        answer: { id, number, packs, milligrams, journalHead, paperId },
        entry: {
          action: recall.kind === 'exercise' ? 'sign-recall-exercise' : 'sign-recall',
          subject: { kind: 'recall', id },
          after: {
            number,
            producedPacks: packs.produced,
            foundPacks: packs.found,
            unaccountedPacks: packs.unaccounted,
            unaccountedMilligrams: milligrams.unaccounted,
            contentHash: sha256(text),
            ...{ journalHead, paperId },
          },
          reason: explanation,
        },
      };
    });
  }

  /** Freezes the report in the unit; its bytes are made after, once, from these facts. */
  private async report(tx: Tx, draft: ReportDraft): Promise<string> {
    const { recall, signedBy, signedAt } = draft;
    const paperId = this.ids.next();
    await issuePaper(tx, {
      ...{ id: paperId, jobId: this.ids.next(), siteId: recall.siteId, kind: recallReportKind },
      ...{ edition: recallReportEdition, number: recall.number, subject: { kind: 'recall', id: recall.id } },
      facts: (await reportFacts(tx, draft)) as unknown as Canonical,
      ...{ issuedAt: signedAt, personId: signedBy },
    });
    return paperId;
  }
}

/** Whether packs, kilograms or the customers' answers leave something to be said. */
export function isOdd({ packs, milligrams, packRates }: RecallFigures): boolean {
  return packs.verdict !== 'adds-up' || milligrams.verdict !== 'adds-up' || packRates.isContradiction;
}

async function insertSigning(tx: Tx, signing: RecallSigning, number: string): Promise<void> {
  try {
    await tx.insert(RecallSigning, signing);
  } catch (error) {
    if (isTakenKey(error)) throw new Refusal('recall-signed', { recall: number });
    throw error;
  }
}
