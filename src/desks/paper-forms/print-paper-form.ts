import { Injectable, type OnModuleInit } from '@nestjs/common';
import { takeDocumentNumber } from '../../drying/take-document-number.js';
import type { Asked, Change } from '../../journal/entry-draft.js';
import { RecordChange } from '../../journal/record-change.js';
import { setAside } from '../../pallets/sscc-blocks.js';
import { ofSite } from '../../plant/of-site.js';
import { lineOf, siteOf } from '../../plant/plant-facts.js';
import type { Canonical } from '../../platform/canonical-text.js';
import type { Tx } from '../../platform/database/unit-of-work.js';
import { Ids } from '../../platform/ids.js';
import { issuePaper } from '../../platform/printing/issue-paper.js';
import { PaperRenderers } from '../../platform/printing/paper-renderers.js';
import { languageNow } from '../../platform/sentences/language.js';
import { localText } from '../../platform/web/local-text.js';
import { paperFormEdition, paperFormKind, rowCounts, type FormKind, type PaperFormFacts } from './form-kinds.js';
import { paperForm } from './paper-form.paper.js';
import { checksToPrint } from './printed-checks.js';

export interface PrintedForm {
  readonly paperId: string;
  readonly number: string;
}

/** Which sheet is wanted. */
export interface FormAsked {
  readonly kind: FormKind;
  readonly lineId: string;
}

/**
 * A sheet is printed ahead, for a night without the server: it gets a number, blank numbered rows, and for pallets the
 * numbers that they will bear, out of the site's one series; for checks what the plans of the line ask for.
 * Refusals: `line-has-no-check-plan`.
 */
@Injectable()
export class PrintPaperForm implements OnModuleInit {
  private readonly nextId = (): string => this.ids.next();

  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
    private readonly renderers: PaperRenderers,
  ) {}

  onModuleInit(): void {
    this.renderers.add(paperFormKind, paperFormEdition, (facts, issuedAt) =>
      paperForm(facts as PaperFormFacts, issuedAt),
    );
  }

  execute(asked: Asked, { kind, lineId }: FormAsked): Promise<PrintedForm> {
    return this.changes.run(asked, { kind, lineId }, async (tx, change) => {
      const { siteId, personId } = asked.actor;
      const facts = await this.facts(tx, asked, { kind, lineId }, change);
      const paperId = this.nextId();
      await issuePaper(tx, {
        ...{ id: paperId, jobId: this.nextId(), siteId, kind: paperFormKind, edition: paperFormEdition },
        ...{ number: facts.number, subject: { kind: 'packing-line', id: lineId }, personId },
        ...{ facts: facts as unknown as Canonical, issuedAt: change.recordedAt },
      });
      return {
        answer: { paperId, number: facts.number },
        entry: {
          action: 'print-paper-form',
          subject: { kind: 'paper', id: paperId },
          touches: [{ kind: 'packing-line', id: lineId }],
          after: {
            ...{ number: facts.number, kind, rowCount: facts.rowCount },
            ...{ from: facts.ssccs[0] ?? null, to: facts.ssccs.at(-1) ?? null },
          },
        },
      };
    });
  }

  private async facts(
    tx: Tx,
    { actor }: Asked,
    { kind, lineId }: FormAsked,
    { recordedAt: at }: Change,
  ): Promise<PaperFormFacts> {
    const { siteId } = actor;
    const line = ofSite(actor, 'packing-line', await lineOf(tx, lineId));
    const site = await siteOf(tx, siteId);
    const language = languageNow();
    const checks = kind === 'checks' ? await checksToPrint(tx, line, { at, language }) : null;
    const number = await takeDocumentNumber(tx, siteId, 'paper-form', at);
    const rowCount = rowCounts[kind];
    const block = { nextId: this.nextId, siteId, deviceId: null, sheet: number, numberCount: rowCount, at };
    return {
      ...{ number, kind, rowCount, language, siteName: site.name },
      ...{ lineCode: line.code, lineName: line.name, printedAtText: localText(at, site.timeZone) },
      ssccs: kind === 'pallets' ? (await setAside(tx, block)).ssccs : [],
      ...(checks === null ? {} : { checks }),
    };
  }
}
