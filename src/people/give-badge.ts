import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { sha256 } from '../platform/canonical-text.js';
import { Ids } from '../platform/ids.js';
import { replaceCredential } from './credentials.js';
import { findPerson } from './person-in-unit.js';
import { newBadgeText } from './secrets.js';

/** The text that the badge carries; null where the same request had been answered before: it is shown once. */
export interface GivenBadge {
  readonly personId: string;
  readonly badge: string | null;
}

/** A person gets a badge for the shared tablets. The one before, and the person's sessions, end. */
@Injectable()
export class GiveBadge {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  /** @param badge drawn, as every badge of a plant is; only the demo says which, since it tells everybody */
  async execute(asked: Asked, personId: string, badge = newBadgeText()): Promise<GivenBadge> {
    const shown: { badge: string | null } = { badge: null };
    const answer = await this.changes.run(asked, { personId }, async (tx, change) => {
      const person = await findPerson(tx, asked.actor.siteId, personId);
      const made = { id: this.ids.next(), personId: person.id, kind: 'badge', secretHash: sha256(badge) } as const;
      await replaceCredential(tx, { ...made, mustChange: false, setAt: change.recordedAt });
      shown.badge = badge;
      return {
        answer: { personId: person.id },
        entry: { action: 'give-badge', subject: { kind: 'person', id: person.id } },
      };
    });
    return { ...answer, ...shown };
  }
}
