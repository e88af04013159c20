import { Injectable, type OnModuleInit } from '@nestjs/common';
import type { Asked, EntryDraft } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { HeavyReads } from '../platform/database/heavy-reads.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { compareSides } from './compare-sides.js';
import { joined, scopeOfEntry } from './ripple-scope.js';
import { palletIdsOf, readSide } from './ripple-side.js';
import type { Ripple } from './ripple.js';

/**
 * What a correction changes, before it is recorded. The command itself is run and taken back, so that what is shown is
 * what will happen, refusals and all: what its open unit sees is after, what everybody else sees meanwhile is before.
 */
@Injectable()
export class CorrectionRipple implements OnModuleInit {
  constructor(
    private readonly changes: RecordChange,
    private readonly heavy: HeavyReads,
  ) {}

  /** A correction that carries the mark of its preview is refused where it would now change something else. */
  onModuleInit(): void {
    this.changes.markBy(async (tx, entry) => (await this.look(tx, entry)).mark);
  }

  /** @param correct runs the command as it is asked; it may refuse, as it would in earnest */
  async of(asked: Asked, correct: (asked: Asked) => Promise<unknown>): Promise<Ripple> {
    const seen: Ripple[] = [];
    await correct({
      ...asked,
      previewed: null,
      rehearsal: async (tx, entry) => {
        seen.push(await this.look(tx, entry));
      },
    });
    const [ripple] = seen;
    if (ripple === undefined) throw new Error('a correction was tried without a unit');
    return ripple;
  }

  private look(tx: ReadFrom, entry: EntryDraft): Promise<Ripple> {
    return this.heavy.snapshot(async (from) => {
      const scope = joined([await scopeOfEntry(from, entry), await scopeOfEntry(tx, entry)]);
      const palletIds = [...new Set([...(await palletIdsOf(from, scope)), ...(await palletIdsOf(tx, scope))])];
      const before = await readSide(from, scope, palletIds);
      const after = await readSide(tx, scope, palletIds);
      return compareSides({ before, after });
    });
  }
}
