import { Injectable } from '@nestjs/common';
import type { Asked } from '../../journal/entry-draft.js';
import { isKnownTimeZone } from '../../core/shift-calendar/time-zone.js';
import { RecordChange } from '../../journal/record-change.js';
import { canonicalText } from '../../platform/canonical-text.js';
import { Ids } from '../../platform/ids.js';
import { BadForm } from '../../platform/refusal.js';
import { packWeigherOf } from '../pack-weighers.js';
import { FileLayout } from './file-layout.entity.js';
import { savedLayoutOf, type FileLayoutForm } from './file-layout.form.js';
import { fileLayoutOf } from './file-layouts.js';

/** Says what the columns of a weigher's files mean, for files that are brought from now on. Not found: pack weigher. */
@Injectable()
export class SetFileLayout {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, weigherId: string, form: FileLayoutForm): Promise<{ readonly id: string }> {
    refuseMeaningless(form);
    return this.changes.run(asked, { weigherId, ...form }, async (tx, change) => {
      await packWeigherOf(tx, asked.actor.siteId, weigherId);
      const before = await fileLayoutOf(tx, weigherId);
      const layout = { ...savedLayoutOf(form) };
      const id = this.ids.next();
      await tx.insert(FileLayout, { id, weigherId, layout: canonicalText(layout), setAt: change.recordedAt });
      return {
        answer: { id },
        entry: {
          action: 'set-file-layout',
          subject: { kind: 'pack-weigher', id: weigherId },
          ...(before === null ? {} : { before: { ...before.layout } }),
          after: layout,
        },
      };
    });
  }
}

/** @throws {BadForm} for what cannot be meant together */
function refuseMeaningless({ timeZone, dayColumn, timeOrder, rejectWord, acceptWord }: FileLayoutForm): void {
  const wrong = (field: string, code: string, facts = {}) => new BadForm([{ field, code, facts }]);
  if (!isKnownTimeZone(timeZone)) throw wrong('timeZone', 'time-zone-unknown', { timeZone });
  if ((dayColumn ?? null) !== null && timeOrder === 'offset') throw wrong('dayColumn', 'file-day-with-offset');
  // An empty field says nothing of a pack, so the word of those that were taken out must be known.
  if ((acceptWord ?? null) !== null && (rejectWord ?? null) === null) throw wrong('rejectWord', 'field-missing');
}
