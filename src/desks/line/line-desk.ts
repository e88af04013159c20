import { Inject, Injectable } from '@nestjs/common';
import { LevelWatch } from '../../hopper/level-watch.js';
import { RefusalsMet } from '../../hopper/refusals-met.js';
import { runOfLineAt } from '../../packing/packing-runs.js';
import type { Happening } from '../../journal/entry-draft.js';
import { Clock, type Instant } from '../../platform/clock.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import type { Viewer } from '../../platform/web/request.js';
import { lineNow, type LineNow } from './line-rows.js';
import { readScan, type ScanReading } from './scan-reading.js';
import { shiftViewOf, type ShiftView } from './shift-view.js';

/** What the pages of a line read. */
@Injectable()
export class LineDesk {
  constructor(
    @Inject(READER) readonly reader: ReadFrom,
    private readonly levels: LevelWatch,
    private readonly refusals: RefusalsMet,
    private readonly clock: Clock,
  ) {}

  line(viewer: Viewer, lineId: string): Promise<LineNow> {
    return lineNow(this.reader, viewer.actor.siteId, { lineId, now: this.clock.now() });
  }

  /**
   * A line as it was when something was done at it: what waited on a device over a changeover belongs to the run and the
   * hopper of then. `statedAt` is the time that the form itself states.
   */
  async lineThen(
    viewer: Viewer,
    lineId: string,
    {
      happening = null,
      statedAt = null,
    }: { readonly happening?: Happening | null; readonly statedAt?: Instant | null },
  ): Promise<LineNow> {
    const now = this.clock.now();
    const stated = statedAt ?? happening?.at ?? now;
    const at = stated < now ? stated : now;
    const then = await lineNow(this.reader, viewer.actor.siteId, { lineId, now: at });
    return at === now ? then : { ...then, run: await runOfLineAt(this.reader, lineId, at) };
  }

  async shift(viewer: Viewer, lineId: string, scanned: string | null): Promise<ShiftView> {
    const { siteId, personId } = viewer.actor;
    const at = await this.line(viewer, lineId);
    const level = at.hopper === null ? null : await this.levels.levelNow(at.hopper.id);
    const scan = scanned === null ? null : await readScan(this.reader, siteId, { text: scanned, at });
    if (scan !== null) await this.remember(viewer, at, scan);
    return shiftViewOf(this.reader, at, { siteId, personId, level, scan });
  }

  /** A bag that the page says no to was refused to this person: for a while they may say that it is in all the same. */
  private async remember({ actor }: Viewer, { hopper }: LineNow, scan: ScanReading): Promise<void> {
    if (scan.kind !== 'bag' || scan.refusal === null || hopper === null || actor.personId === null) return;
    const { siteId, personId } = actor;
    await this.refusals.remember({
      siteId,
      personId,
      hopperId: hopper.id,
      bagId: scan.bag.id,
      code: scan.refusal.code,
    });
  }
}
