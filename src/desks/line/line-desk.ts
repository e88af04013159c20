import { Inject, Injectable } from '@nestjs/common';
import { LevelWatch } from '../../hopper/level-watch.js';
import { RefusalsMet } from '../../hopper/refusals-met.js';
import { runOfLineAt } from '../../packing/packing-runs.js';
import { isLateForReach } from '../../open-points/reach-job.js';
import type { Happening } from '../../journal/entry-draft.js';
import { Clock, millisecondsBetween, type Instant } from '../../platform/clock.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import type { Viewer } from '../../platform/web/request.js';
import { lineNow, type LineNow } from './line-rows.js';
import { readScan } from './scan-reading.js';
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

  /**
   * Whether something is entered of a time that others have gone on from: later than what is as good as made at once, or
   * of a run that is closed.
   */
  async isOfEarlier(viewer: Viewer, lineId: string, statedAt: Instant | null | undefined): Promise<boolean> {
    if (statedAt == null) return false;
    const lateMinutes = Math.floor(millisecondsBetween(statedAt, this.clock.now()) / 60_000);
    if (isLateForReach({ lateMinutes })) return true;
    const { run } = await this.lineThen(viewer, lineId, { statedAt });
    return run !== null && run.closedAt !== null;
  }

  async shift(viewer: Viewer, lineId: string, scanned: string | null): Promise<ShiftView> {
    const { siteId, personId } = viewer.actor;
    const at = await this.line(viewer, lineId);
    const level = at.hopper === null ? null : await this.levels.levelNow(at.hopper.id);
    const scan = scanned === null ? null : await readScan(this.reader, siteId, { text: scanned, at });
    return shiftViewOf(this.reader, at, { siteId, personId, level, scan });
  }

  /**
   * Somebody goes on from the refusal of a bag: where it is refused here and now, that is remembered, and for a while they
   * may say that the bag is in all the same. Reading a scan remembers nothing.
   *
   * @returns whether the bag is refused
   */
  async meetRefusal({ actor }: Viewer, lineId: string, bag: string): Promise<boolean> {
    const { siteId, personId } = actor;
    const at = await lineNow(this.reader, siteId, { lineId, now: this.clock.now() });
    const scan = await readScan(this.reader, siteId, { text: bag, at });
    if (scan.kind !== 'bag' || scan.refusal === null || at.hopper === null || personId === null) return false;
    const met = { siteId, personId, hopperId: at.hopper.id, bagId: scan.bag.id };
    await this.refusals.remember({ ...met, code: scan.refusal.code });
    return true;
  }
}
