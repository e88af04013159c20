import { Injectable } from '@nestjs/common';
import { takeDocumentNumber } from '../drying/take-document-number.js';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { Ids } from '../platform/ids.js';
import { Refusal } from '../platform/refusal.js';
import { reachOfScopes } from './recall-reach.js';
import { RecallScope } from './recall-scope.entity.js';
import { Recall } from './recall.entity.js';
import type { OpenRecallForm } from './recall.form.js';
import { RecallOrigins } from './recall-origins.js';
import type { RecallKind } from './recall-words.js';
import type { RecallScopeRow } from './recalls.js';
import { settleScope } from './settle-scope.js';

export interface RecallOpened {
  readonly id: string;
  readonly number: string;
  readonly kind: RecallKind;
  readonly startedAt: string;
}

/**
 * Quality opens a recall or an exercise, and its clock begins to run.
 * Refusals: `recall-scope-empty`, `recall-time-not-usable`, `recall-safety-covers-possible`,
 * `recall-likely-needs-reason`; not found: the things it is of, the hold or complaint it begins with.
 */
@Injectable()
export class OpenRecall {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
    private readonly origins: RecallOrigins,
  ) {}

  execute(asked: Asked, form: OpenRecallForm): Promise<RecallOpened> {
    return this.changes.run(asked, form, async (tx, change) => {
      const { siteId, personId } = asked.actor;
      const { kind, hazard, reason } = form;
      const sureness = form.sureness ?? 'possible';
      const surenessReason = sureness === 'likely' ? (form.surenessReason ?? null) : null;
      if (sureness === 'likely' && hazard === 'safety') throw new Refusal('recall-safety-covers-possible');
      if (sureness === 'likely' && surenessReason === null) throw new Refusal('recall-likely-needs-reason');
      const origin = await this.origins.find(tx, siteId, form);
      const scopes: RecallScopeRow[] = [];
      for (const scope of form.scopes) scopes.push(await settleScope(tx, siteId, scope));
      const reach = await reachOfScopes(tx, siteId, scopes, sureness);
      if (reach.ranges.length === 0 && reach.bags.length === 0) throw new Refusal('recall-scope-empty');
      const startedAt = change.recordedAt;
      const number = await takeDocumentNumber(tx, siteId, kind, startedAt);
      const id = this.ids.next();
      await tx.insert(Recall, {
        ...{ id, siteId, number, kind, hazard, reason, sureness, surenessReason, ...origin },
        ...{ openedBy: personId, startedAt, voidedBy: null },
      });
      for (const scope of scopes) {
        await tx.insert(RecallScope, { id: this.ids.next(), recallId: id, ...scope, voidedBy: null });
      }
      return {
        answer: { id, number, kind, startedAt },
        entry: {
          action: kind === 'exercise' ? 'open-recall-exercise' : 'open-recall',
          subject: { kind: 'recall', id },
          touches: scopes.flatMap(({ scopeKind, scopeId }) => {
            const touched = touchedBy[scopeKind];
            return touched === null ? [] : [{ kind: touched, id: scopeId }];
          }),
          after: { number, kind, hazard, sureness, ...origin, scopes: scopes.map((scope) => ({ ...scope })) },
          reason,
        },
      };
    });
  }
}

/** What the journal knows the thing as. */
const touchedBy = {
  'bulk-bag': 'bulk-bag',
  lot: 'lot',
  'packing-run': 'packing-run',
  'dryer-shift': null,
  'packing-shift': null,
} as const;
