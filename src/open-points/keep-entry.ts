import { Inject, Injectable } from '@nestjs/common';
import type { Asked, Happening } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import type { Actor } from '../platform/actor.js';
import { canonicalText, type Canonical } from '../platform/canonical-text.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { Ids } from '../platform/ids.js';
import { say } from '../platform/sentences/sentences.js';
import { sayLocally } from '../platform/web/local-text.js';
import type { Barred } from '../platform/web/request.js';
import { withNames } from './facts-with-names.js';
import { KeptEntry } from './kept-entry.entity.js';
import { settlerOf, whatWasMeant, whyKept } from './kept-entry-words.js';
import { raisePoint } from './raise-point.js';

/** An entry that cannot be taken as it stands. */
export interface EntryToKeep {
  /** What was entered, without secrets. */
  readonly content: { readonly [field: string]: Canonical };
  readonly address: string;
  readonly why: Barred;
  readonly timeZone: string;
}

/** What a device is told: the entry is with the house, and what becomes of it. */
export interface KeptAnswer {
  readonly kept: true;
  readonly id: string;
  readonly code: string;
  readonly says: string;
}

/**
 * What happened away from the server and cannot be taken as it stands is kept as it came, and a point is opened for
 * those who can find out what was. The same key again gives the same answer. Refuses nothing.
 */
@Injectable()
export class KeepEntry {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  async execute(asked: Asked, happening: Happening, entry: EntryToKeep): Promise<KeptAnswer> {
    const { why, address, content } = entry;
    const route = `${asked.route} kept`;
    const kept = await this.changes.run(
      { ...asked, route, happening: null },
      { address, content },
      async (tx, change) => {
        const { siteId, personId, deviceId } = asked.actor;
        const id = this.ids.next();
        const { how, at: happenedAt, sheet, row: sheetRow, writtenBy } = happening;
        await tx.insert(KeptEntry, {
          ...{ id, siteId, personId, deviceId, route: asked.route, address, entryKey: asked.key ?? '' },
          ...{ content: canonicalText(content), how, happenedAt, sheet, sheetRow, writtenBy },
          ...{ code: why.code, facts: canonicalText(why.facts), keptAt: change.recordedAt },
        });
        const subject = { kind: 'kept-entry', id };
        await raisePoint(tx, {
          ...{ id: this.ids.next(), siteId, cause: causeOf(how), facts: factsOf(asked, happening, entry), subject },
          ...{ role: settlerOf(asked.route), personId, at: change.recordedAt },
        });
        const after = { how, code: why.code, route: asked.route, address, happenedAt, sheet, sheetRow, writtenBy };
        return {
          answer: { id, code: why.code, facts: why.facts },
          entry: {
            action: 'keep-entry',
            subject,
            after,
            occurredAt: happenedAt < change.recordedAt ? happenedAt : change.recordedAt,
          },
        };
      },
    );
    const [named = kept] = await withNames(this.reader, [kept]);
    const sentence = sayLocally(whyKept(kept.code), named.facts, entry.timeZone);
    return { kept: true, id: kept.id, code: kept.code, says: say('entry-kept-says', { why: sentence }) };
  }

  /** Whether an entry with this key was kept before: it is not tried again, since it is with people now. */
  async wasKept({ siteId }: Actor, route: string, entryKey: string): Promise<Barred | null> {
    const [row] = await this.reader.sql<{ code: string; facts: string }>`
      SELECT "code", "facts" FROM "kept_entry"
      WHERE "site_id" = ${siteId} AND "entry_key" = ${entryKey} AND "route" = ${route} AND "voided_by" IS NULL`;
    return row === undefined ? null : { code: row.code, facts: JSON.parse(row.facts) as Barred['facts'] };
  }
}

const causeOf = (how: Happening['how']): string => (how === 'queued' ? 'entry-kept-queued' : 'entry-kept-paper');

function factsOf(asked: Asked, { at, sheet, row }: Happening, { why, address }: EntryToKeep): Barred['facts'] {
  return {
    ...why.facts,
    keptWhat: whatWasMeant(asked.route),
    keptWhy: whyKept(why.code),
    keptAt: at,
    keptSheet: sheet,
    keptRow: row,
    keptAddress: address,
  };
}
