import { Injectable } from '@nestjs/common';
import type { VNode } from 'preact';
import { blindCountsOf } from '../../dispatch/blind-counts.js';
import { CheckVehicle, checkPointsAt } from '../../dispatch/check-vehicle.js';
import { CountBlind } from '../../dispatch/count-blind.js';
import { findDelivery, loadedUnitsOf } from '../../dispatch/deliveries.js';
import { deliveryView, type UnitView } from '../../dispatch/delivery-views.js';
import { LoadScanned } from '../../dispatch/load-scanned.js';
import { CountBlindForm } from '../../dispatch/loading.form.js';
import { lastVehicleCheck } from '../../dispatch/take-delivery.js';
import { UnloadUnit } from '../../dispatch/unload-unit.js';
import type { Asked } from '../../journal/entry-draft.js';
import { NotFound } from '../../platform/refusal.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import type { Viewer } from '../../platform/web/request.js';
import type { SentForm } from '../../platform/web/sent-form.js';
import { DispatchDesk } from './dispatch-desk.js';
import { ScanForm, UnloadPageForm, VehicleCheckPageForm } from './dispatch.form.js';
import { countPage, unloadPage, vehicleCheckPage } from './dock-forms.page.js';
import { placeIdBefore, storePlaces } from './loading-view.js';

/** One delivery as it is looked at from one of the two desks. */
export interface AtDock {
  readonly viewer: Viewer;
  readonly id: string;
  readonly desk: 'dispatch' | 'dock';
}

/** Somebody who acts there. */
export interface ActingAtDock extends AtDock {
  readonly asked: Asked;
}

/** What clerk and loader do alike: scan, check the vehicle, count, take off. Only the address differs. */
@Injectable()
export class DockActs {
  constructor(
    private readonly desk: DispatchDesk,
    private readonly loadScanned: LoadScanned,
    private readonly checkVehicle: CheckVehicle,
    private readonly countBlind: CountBlind,
    private readonly unloadUnit: UnloadUnit,
  ) {}

  scan(sent: SentForm, at: ActingAtDock, again: (trouble: FormTrouble) => Promise<VNode>) {
    return sent.take({
      form: ScanForm,
      timeZone: at.viewer.timeZone,
      act: (form) => this.loadScanned.execute(at.asked, at.id, form),
      next: ({ unit }) => `${baseOf(at)}?unit=${unit.id}`,
      again,
    });
  }

  async checkPage(at: AtDock, trouble: FormTrouble | null = null): Promise<VNode> {
    const { siteId } = at.viewer.actor;
    const delivery = await findDelivery(this.desk.reader, siteId, at.id);
    const points = await checkPointsAt(this.desk.reader, siteId, this.desk.clock.now());
    const last = await lastVehicleCheck(this.desk.reader, delivery.id);
    return vehicleCheckPage({ viewer: at.viewer, delivery, base: baseOf(at), points, last, trouble });
  }

  check(sent: SentForm, at: ActingAtDock) {
    return sent.take({
      form: VehicleCheckPageForm,
      timeZone: at.viewer.timeZone,
      act: async ({ registration, haulierCode, fine = [] }) => {
        const points = await checkPointsAt(this.desk.reader, at.viewer.actor.siteId, this.desk.clock.now());
        const answers = points.map(({ code }) => ({ point: code, isFine: fine.includes(code) }));
        return this.checkVehicle.execute(at.asked, at.id, { registration, haulierCode, answers });
      },
      next: () => baseOf(at),
      says: ({ passed }) => ({ code: passed ? 'said-vehicle-passed' : 'said-vehicle-failed', facts: {} }),
      again: (trouble) => this.checkPage(at, trouble),
    });
  }

  async countPage(at: AtDock, trouble: FormTrouble | null = null): Promise<VNode> {
    const delivery = await findDelivery(this.desk.reader, at.viewer.actor.siteId, at.id);
    const counts = await blindCountsOf(this.desk.reader, delivery.id, delivery.loadedCount);
    return countPage({ viewer: at.viewer, delivery, base: baseOf(at), counts, trouble });
  }

  count(sent: SentForm, at: ActingAtDock) {
    return sent.take({
      form: CountBlindForm,
      timeZone: at.viewer.timeZone,
      act: (form) => this.countBlind.execute(at.asked, at.id, form),
      next: ({ agrees }) => (agrees ? baseOf(at) : `${baseOf(at)}/count`),
      says: ({ agrees }) => ({ code: agrees ? 'said-count-agrees' : 'said-count-differs', facts: {} }),
      again: (trouble) => this.countPage(at, trouble),
    });
  }

  async unloadPage(at: AtDock, unitId: string, trouble: FormTrouble | null = null): Promise<VNode> {
    const { siteId } = at.viewer.actor;
    const delivery = await deliveryView(this.desk.reader, siteId, at.id, this.desk.clock.now());
    const unit = delivery.units.find(({ id }) => id === unitId);
    // Taken off by somebody else meanwhile: what was entered is shown with the reason why it did not count.
    if (unit === undefined && trouble === null) throw new NotFound('loadable-unit', unitId);
    const shown: Pick<UnitView, 'id' | 'name' | 'kind'> = unit ?? { id: unitId, name: unitId, kind: 'pallet' };
    return unloadPage({
      viewer: at.viewer,
      delivery,
      base: baseOf(at),
      unit: shown,
      places: await storePlaces(this.desk.reader, siteId),
      placeId: await placeIdBefore(this.desk.reader, shown),
      trouble,
    });
  }

  unload(sent: SentForm, at: ActingAtDock) {
    return sent.take({
      form: UnloadPageForm,
      timeZone: at.viewer.timeZone,
      act: async ({ unit, reason, placeId = null }) => {
        const { bagIds } = await loadedUnitsOf(this.desk.reader, at.id);
        const taken = bagIds.includes(unit) ? { bag: unit } : { pallet: unit };
        return this.unloadUnit.execute(at.asked, at.id, { ...taken, reason, placeId });
      },
      next: () => baseOf(at),
      says: () => ({ code: 'said-taken-off', facts: {} }),
      again: (trouble) => {
        const { unit } = trouble.entered;
        return this.unloadPage(at, typeof unit === 'string' ? unit : '', trouble);
      },
    });
  }
}

/** The address of the delivery at the desk. */
export function baseOf({ desk, id }: Pick<AtDock, 'desk' | 'id'>): string {
  return `/${desk}/${id}`;
}
