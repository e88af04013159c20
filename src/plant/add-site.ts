import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { Refusal } from '../platform/refusal.js';
import { insertCoded } from './insert-coded.js';
import { refuseWrongNumbers } from './site-numbers.js';
import { Site } from './site.entity.js';
import type { AddSiteForm } from './site.form.js';

/**
 * A packing house is set up. It comes before any person does: the site whose id the actor carries is the one that is
 * added, and its journal begins with this entry.
 * Refusals: `time-zone-unknown`, `gln-wrong`, `company-prefix-wrong`, `gln-not-of-prefix`, `site-there-already`,
 * `code-taken`.
 */
@Injectable()
export class AddSite {
  constructor(private readonly changes: RecordChange) {}

  execute(asked: Asked, form: AddSiteForm): Promise<{ readonly id: string }> {
    return this.changes.run(asked, form, async (tx) => {
      const id = asked.actor.siteId;
      refuseWrongNumbers(form);
      if ((await tx.findOne(Site, { id })) !== null) throw new Refusal('site-there-already', { code: form.code });
      await insertCoded(tx, Site, { id, ...columnsOf(form) });
      return { answer: { id }, entry: { action: 'add-site', subject: { kind: 'site', id }, after: columnsOf(form) } };
    });
  }
}

function columnsOf(form: AddSiteForm) {
  const { code, name, timeZone, productionDayStart, gln, companyPrefix, ssccExtensionDigit } = form;
  return { code, name, timeZone, productionDayStart, gln, companyPrefix, ssccExtensionDigit };
}
