import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { CustomerContact } from './customer-contact.entity.js';
import type { SetCustomerContactForm } from './customer.form.js';
import { ofSite } from './of-site.js';
import { customerOf } from './plant-facts.js';

/** A customer's name and address are others now. The journal says that they changed, not what they are. */
@Injectable()
export class SetCustomerContact {
  constructor(private readonly changes: RecordChange) {}

  execute(asked: Asked, form: SetCustomerContactForm): Promise<{ readonly id: string }> {
    return this.changes.run(asked, form, async (tx) => {
      const { id } = ofSite(asked.actor, 'customer', await customerOf(tx, form.customerId));
      const { name, address, telephone = null } = form;
      await tx.remove(CustomerContact, { customerId: id });
      await tx.insert(CustomerContact, { customerId: id, name, address, telephone });
      return { answer: { id }, entry: { action: 'set-customer-contact', subject: { kind: 'customer', id } } };
    });
  }
}
