import { Inject, Injectable } from '@nestjs/common';
import type { Asked } from '../../journal/entry-draft.js';
import { RecordChange } from '../../journal/record-change.js';
import { Clock } from '../../platform/clock.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { Ids } from '../../platform/ids.js';
import { bringSamplePoint, samplePointSaysSo } from './bring-sample-point.js';

/** Raises a point for the lead where a hand sample is overdue, and clears it once that is over. */
@Injectable()
export class WatchHandSamples {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly changes: RecordChange,
    private readonly clock: Clock,
    private readonly ids: Ids,
  ) {}

  /** Records nothing where the points say already what is so. Lines whose plan has ended are looked at too. */
  async look(): Promise<void> {
    const at = this.clock.now();
    const lines = await this.reader.sql<{ siteId: string; lineId: string }>`
      SELECT DISTINCT "site_id" AS "siteId", "line_id" AS "lineId" FROM "hand_sample_plan" WHERE "voided_by" IS NULL
      ORDER BY "line_id"`;
    for (const line of lines) {
      if (!(await samplePointSaysSo(this.reader, { ...line, at }))) await this.bring(line);
    }
  }

  private async bring({ siteId, lineId }: { readonly siteId: string; readonly lineId: string }): Promise<void> {
    const asked: Asked = { actor: { siteId, personId: null, deviceId: null, roles: [] }, route: 'HOUSE', key: null };
    await this.changes.run(asked, {}, async (tx, { recordedAt: at }) => {
      const nextId = (): string => this.ids.next();
      const isOverdue = await bringSamplePoint(tx, { nextId, siteId, lineId, personId: null, at });
      const subject = { kind: 'packing-line', id: lineId };
      return { answer: null, entry: { action: 'look-at-weighing', subject, after: { isOverdue } } };
    });
  }
}
