import { Inject, Injectable } from '@nestjs/common';
import { CorrectTip } from '../../hopper/correct-tip.js';
import type { Asked } from '../../journal/entry-draft.js';
import { journalPage, type EntryLine } from '../../journal/journal-entries.js';
import { CorrectCoderChange } from '../../packing/correct-coder-change.js';
import { CorrectCount } from '../../packing/correct-count.js';
import { CorrectFilmUse } from '../../packing/correct-film-use.js';
import { CorrectLooseCount } from '../../packing/correct-loose-count.js';
import { CorrectRemoval } from '../../packing/correct-removal.js';
import { CorrectStop } from '../../packing/correct-stop.js';
import { CorrectPallet } from '../../pallets/correct-pallet.js';
import type { Actor } from '../../platform/actor.js';
import { Clock, millisecondsBetween } from '../../platform/clock.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { Refusal } from '../../platform/refusal.js';

/** So long after an entry its own person may still say that it did not occur, with one touch. Our own value, no source. */
const undoMinutes = 10;

/** What can be undone here: its action in the journal. */
const undoable = [
  'tip-bag',
  'tip-one-of-several',
  'stop-line',
  'remove-sugar',
  'count-packs',
  'count-loose-packs',
  'fit-film',
  'change-code',
  'build-pallet',
] as const;
type Undoable = (typeof undoable)[number];

/** One's own last entry, while it may be undone. */
export interface LastEntry {
  readonly sequence: number;
  readonly action: Undoable;
  readonly subjectId: string;
  readonly recordedAt: string;
  readonly after: Readonly<Record<string, unknown>>;
}

/**
 * One's own last entry did not occur: it is made void by the correction of its own kind. What has happened is never undone.
 * Refusals: `undo-too-late`, `undo-of-another`, `undo-done-already`, `undo-not-that`, `undo-moved-on`, and those of the
 * correction.
 */
@Injectable()
export class UndoLast {
  // eslint-disable-next-line max-params -- entries of eight kinds are taken back, each by the command of its own room
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly clock: Clock,
    private readonly correctTip: CorrectTip,
    private readonly correctStop: CorrectStop,
    private readonly correctRemoval: CorrectRemoval,
    private readonly correctCount: CorrectCount,
    private readonly correctLooseCount: CorrectLooseCount,
    private readonly correctFilmUse: CorrectFilmUse,
    private readonly correctCoderChange: CorrectCoderChange,
    private readonly correctPallet: CorrectPallet,
  ) {}

  /** @throws {Refusal} where there is nothing that this person may undo now */
  async last(actor: Actor): Promise<LastEntry> {
    const entries = await journalPage(this.reader, actor.siteId, { before: null, limit: 200 });
    const own = entries.find(({ personId }) => personId === actor.personId);
    const onDevice = actor.deviceId === null ? own : entries.find(({ deviceId }) => deviceId === actor.deviceId);
    if (onDevice !== undefined && onDevice.personId !== actor.personId) throw new Refusal('undo-of-another');
    const now = this.clock.now();
    const isFresh = own !== undefined && millisecondsBetween(own.recordedAt, now) <= undoMinutes * 60_000;
    if (!isFresh) throw new Refusal('undo-too-late', { minutes: undoMinutes });
    return lastOf(own);
  }

  /** @param sequence the entry that was shown: another may have come since */
  async execute(asked: Asked, sequence: number): Promise<unknown> {
    const entry = await this.last(asked.actor);
    if (entry.sequence !== sequence) throw new Refusal('undo-moved-on');
    return this.correct(asked, entry);
  }

  private async correct(asked: Asked, { action, subjectId, after }: LastEntry): Promise<unknown> {
    const [why, reason] = ['did-not-occur', 'undone within ten minutes'] as const;
    const id = [after['id'], after['tip']].find((one) => typeof one === 'string') ?? subjectId;
    switch (action) {
      case 'tip-bag':
      case 'tip-one-of-several':
        return this.correctTip.execute(asked, action === 'tip-bag' ? id : subjectId, { why, reason });
      case 'stop-line':
        return this.correctStop.execute(asked, id, { why, reason });
      case 'remove-sugar':
        return this.correctRemoval.execute(asked, id, { why, reason });
      case 'count-packs':
        return this.correctCount.execute(asked, await this.lastCountOf(subjectId), { why, reason });
      case 'count-loose-packs':
        return this.correctLooseCount.execute(asked, id, { why, reason });
      case 'fit-film':
        return this.correctFilmUse.execute(asked, id, { why, reason });
      case 'change-code':
        return this.correctCoderChange.execute(asked, id, { why, reason });
      case 'build-pallet':
        return this.correctPallet.execute(asked, subjectId, { reason });
    }
  }

  /** A count is named by its run: the one that was recorded last. */
  private async lastCountOf(runId: string): Promise<string> {
    const [row] = await this.reader.sql<{ id: string }>`
      SELECT "id" FROM "pack_count" WHERE "run_id" = ${runId} AND "voided_by" IS NULL ORDER BY "id" DESC LIMIT 1`;
    if (row === undefined) throw new Refusal('undo-moved-on');
    return row.id;
  }
}

function lastOf({ sequence, action, subjectId, recordedAt, after }: EntryLine): LastEntry {
  if (/^(correct|swap)-/.test(action)) throw new Refusal('undo-done-already');
  const known = undoable.find((one) => one === action);
  if (known === undefined) throw new Refusal('undo-not-that');
  const recorded = JSON.parse(after ?? '{}') as Readonly<Record<string, unknown>>;
  return { sequence, action: known, subjectId, recordedAt, after: recorded };
}
