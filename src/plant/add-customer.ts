import { Injectable } from '@nestjs/common';
import { isGln } from '../core/identifiers/gln.js';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { Ids } from '../platform/ids.js';
import { Refusal } from '../platform/refusal.js';
import { CustomerContact } from './customer-contact.entity.js';
import { Customer } from './customer.entity.js';
import type { AddCustomerForm } from './customer.form.js';
import { insertCoded } from './insert-coded.js';
import { PaperLanguage } from './paper-language.entity.js';

/**
 * A customer is set up. Name and address stand apart and stay out of the journal, so that they can go.
 * Refusals: `gln-wrong`, `code-taken`.
 */
@Injectable()
export class AddCustomer {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: AddCustomerForm): Promise<{ readonly id: string }> {
    return this.changes.run(asked, form, async (tx, change) => {
      const id = this.ids.next();
      const row = { code: form.code, gln: form.gln ?? null };
      if (row.gln !== null && !isGln(row.gln)) throw new Refusal('gln-wrong', { gln: row.gln });
      await insertCoded(tx, Customer, { id, siteId: asked.actor.siteId, ...row });
      const { name, address, telephone = null, paperLanguage = null } = form;
      await tx.insert(CustomerContact, { customerId: id, name, address, telephone });
      if (paperLanguage !== null) {
        const papers = { siteId: asked.actor.siteId, customerId: id, language: paperLanguage };
        await tx.insert(PaperLanguage, { id: this.ids.next(), ...papers, setAt: change.recordedAt });
      }
      const after = { ...row, ...(paperLanguage === null ? {} : { paperLanguage }) };
      return { answer: { id }, entry: { action: 'add-customer', subject: { kind: 'customer', id }, after } };
    });
  }
}
