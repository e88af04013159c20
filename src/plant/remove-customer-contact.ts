import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { Refusal } from '../platform/refusal.js';
import { CustomerContact } from './customer-contact.entity.js';
import { ofSite } from './of-site.js';
import { customerOf } from './plant-facts.js';

/**
 * A customer's name and address go when their time is up; deliveries and journal keep the id.
 * Refusals: `contact-removed-already`.
 */
@Injectable()
export class RemoveCustomerContact {
  constructor(private readonly changes: RecordChange) {}

  execute(asked: Asked, customerId: string): Promise<{ readonly id: string }> {
    return this.changes.run(asked, { customerId }, async (tx) => {
      const { id, code } = ofSite(asked.actor, 'customer', await customerOf(tx, customerId));
      const removed = await tx.remove(CustomerContact, { customerId: id });
      if (removed === 0) throw new Refusal('contact-removed-already', { code });
      return { answer: { id }, entry: { action: 'remove-customer-contact', subject: { kind: 'customer', id } } };
    });
  }
}
