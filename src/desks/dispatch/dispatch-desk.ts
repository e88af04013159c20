import { Inject, Injectable } from '@nestjs/common';
import { deliveriesToGo } from '../../dispatch/deliveries.js';
import { dockDeliveries, type DockDelivery } from '../../dispatch/dock-deliveries.js';
import { waitingReturns, type ReturnedUnitRow } from '../../dispatch/returns.js';
import { shiftAt } from '../../plant/plant-facts.js';
import { Clock, shifted } from '../../platform/clock.js';
import { HeavyReads } from '../../platform/database/heavy-reads.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import type { Viewer } from '../../platform/web/request.js';
import { loadingView, placeBefore, type LoadingView } from './loading-view.js';

/** What left in the last hours is still shown, for its papers. */
const shownAfterMilliseconds = 12 * 3_600_000;

/** What the clerk's and the loader's pages read. */
@Injectable()
export class DispatchDesk {
  constructor(
    @Inject(READER) readonly reader: ReadFrom,
    readonly clock: Clock,
    private readonly heavy: HeavyReads,
  ) {}

  /** One delivery with all that is on; standings are computed, so it is read apart. */
  loading(viewer: Viewer, deliveryId: string, lastUnitId: string | null = null): Promise<LoadingView> {
    const asked = { deliveryId, lastUnitId, now: this.clock.now() };
    return this.heavy.snapshot((from) => loadingView(from, viewer.actor.siteId, asked));
  }

  /** Today's deliveries, the next to leave first, and what came back and waits. */
  async today(viewer: Viewer): Promise<{
    readonly deliveries: readonly DockDelivery[];
    readonly returned: readonly ReturnedUnitRow[];
    readonly today: string;
  }> {
    const { siteId } = viewer.actor;
    const now = this.clock.now();
    return this.heavy.snapshot(async (from) => {
      const today = (await shiftAt(from, siteId, now)).productionOn;
      const toGo = await deliveriesToGo(from, siteId, { on: today, leftSince: shifted(now, -shownAfterMilliseconds) });
      return {
        deliveries: await dockDeliveries(from, toGo),
        returned: await waitingReturns(from, siteId),
        today,
      };
    });
  }

  /** Where a refused scan's unit goes back to. */
  async putBack(viewer: Viewer, trouble: FormTrouble): Promise<string | null> {
    const { scan } = trouble.entered;
    return typeof scan === 'string' ? placeBefore(this.reader, viewer.actor.siteId, scan) : null;
  }
}
