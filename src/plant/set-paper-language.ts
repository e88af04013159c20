import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { Ids } from '../platform/ids.js';
import { ofSite } from './of-site.js';
import { PaperLanguage } from './paper-language.entity.js';
import type { CustomerPaperLanguageForm, SitePaperLanguageForm } from './paper-language.form.js';
import { customerOf, siteOf } from './plant-facts.js';

/**
 * Papers that are issued from now on are in another language: those of a customer, or of the site. Papers that were issued
 * stay as they are.
 * Not found: customer.
 */
@Injectable()
export class SetPaperLanguage {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  forSite(asked: Asked, form: SitePaperLanguageForm): Promise<{ readonly id: string }> {
    return this.changes.run(asked, form, async (tx, change) => {
      const { siteId } = asked.actor;
      const { paperLanguage: before } = await siteOf(tx, siteId);
      const row = { siteId, customerId: null, language: form.paperLanguage, setAt: change.recordedAt };
      await tx.insert(PaperLanguage, { id: this.ids.next(), ...row });
      return {
        answer: { id: siteId },
        entry: {
          action: 'set-paper-language',
          subject: { kind: 'site', id: siteId },
          before: { paperLanguage: before },
          after: { paperLanguage: form.paperLanguage },
        },
      };
    });
  }

  forCustomer(asked: Asked, customerId: string, form: CustomerPaperLanguageForm): Promise<{ readonly id: string }> {
    return this.changes.run(asked, { customerId, ...form }, async (tx, change) => {
      const customer = ofSite(asked.actor, 'customer', await customerOf(tx, customerId));
      const { id, siteId, paperLanguage: before } = customer;
      const language = form.paperLanguage ?? null;
      await tx.insert(PaperLanguage, {
        id: this.ids.next(),
        ...{ siteId, customerId: id, language, setAt: change.recordedAt },
      });
      return {
        answer: { id },
        entry: {
          action: 'set-paper-language',
          subject: { kind: 'customer', id },
          before: { paperLanguage: before },
          after: { paperLanguage: language },
        },
      };
    });
  }
}
