import { Controller, Get, Param, ParseUUIDPipe, Post, Query } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import { ChangeDelivery } from '../../dispatch/change-delivery.js';
import { deliveriesOfUnits, deliveryOf, findDelivery, linesOf } from '../../dispatch/deliveries.js';
import { findUnit } from '../../dispatch/find-unit.js';
import { PlanDelivery } from '../../dispatch/plan-delivery.js';
import type { Asked } from '../../journal/entry-draft.js';
import { customersOf } from '../../plant/customers.js';
import { shiftAt } from '../../plant/plant-facts.js';
import { May } from '../../platform/actor.js';
import { BadForm, NotFound, Refusal } from '../../platform/refusal.js';
import { say } from '../../platform/sentences/sentences.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm } from '../../platform/web/sent-form.js';
import { DispatchDesk } from './dispatch-desk.js';
import { PlanPageForm } from './dispatch.form.js';
import { goodsOf, linesOfPlan } from './plan-lines.js';
import { planPage } from './plan.page.js';
import { ScanQuery } from './scan.query.js';
import { dispatchTodayPage, type FoundByScan } from './today.page.js';

/** The clerk's day: what leaves, and what is planned. */
@ApiExcludeController()
@Controller('dispatch')
export class DispatchController {
  constructor(
    private readonly desk: DispatchDesk,
    private readonly planDelivery: PlanDelivery,
    private readonly changeDelivery: ChangeDelivery,
  ) {}

  @Get()
  @May('read')
  async today(@Looking() viewer: Viewer, @Query() query: ScanQuery): Promise<VNode> {
    const scan = query.scan ?? null;
    const scanned = scan === null ? null : await this.scanned(viewer, scan);
    return dispatchTodayPage({ viewer, ...(await this.desk.today(viewer)), scanned });
  }

  @Get('new')
  @May('keep-deliveries')
  plan(@Looking() viewer: Viewer): Promise<VNode> {
    return this.planAgain(viewer, null, null);
  }

  @Post('new')
  @May('keep-deliveries')
  planIt(@Sent() sent: SentForm, @Asking() asked: Asked, @Looking() viewer: Viewer) {
    return sent.take({
      form: PlanPageForm,
      times: ['leavesAt'],
      timeZone: viewer.timeZone,
      act: async (form) => {
        const customerId = form.customerId ?? null;
        if (customerId === null) throw new BadForm([{ field: 'customerId', code: 'field-missing', facts: {} }]);
        return this.planDelivery.execute(asked, { ...(await this.planned(viewer, form)), customerId });
      },
      next: ({ id }) => `/dispatch/${id}`,
      says: () => ({ code: 'said-delivery-planned', facts: {} }),
      again: (trouble) => this.planAgain(viewer, null, trouble),
    });
  }

  @Get(':deliveryId/change')
  @May('keep-deliveries')
  change(@Looking() viewer: Viewer, @Param('deliveryId', ParseUUIDPipe) id: string): Promise<VNode> {
    return this.planAgain(viewer, id, null);
  }

  @Post(':deliveryId/change')
  @May('keep-deliveries')
  changeIt(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('deliveryId', ParseUUIDPipe) id: string,
  ) {
    return sent.take({
      form: PlanPageForm,
      times: ['leavesAt'],
      timeZone: viewer.timeZone,
      act: async (form) => {
        const reason = form.reason ?? null;
        if (reason === null) throw new BadForm([{ field: 'reason', code: 'field-missing', facts: {} }]);
        return this.changeDelivery.execute(asked, id, { ...(await this.planned(viewer, form)), reason });
      },
      next: () => `/dispatch/${id}`,
      says: () => ({ code: 'said-plan-changed', facts: {} }),
      again: (trouble) => this.planAgain(viewer, id, trouble),
    });
  }

  private async planned(viewer: Viewer, form: PlanPageForm) {
    const goods = await goodsOf(this.desk.reader, viewer.actor.siteId);
    const { orderNumber, plannedOn, leavesAt = null } = form;
    return { orderNumber, plannedOn, leavesAt, lines: linesOfPlan(form, goods) };
  }

  private async planAgain(viewer: Viewer, id: string | null, trouble: FormTrouble | null): Promise<VNode> {
    const { reader, clock } = this.desk;
    const { siteId } = viewer.actor;
    const delivery = id === null ? null : await findDelivery(reader, siteId, id);
    return planPage({
      viewer,
      customers: await customersOf(reader, siteId, { before: null, limit: 200 }),
      goods: await goodsOf(reader, siteId),
      today: (await shiftAt(reader, siteId, clock.now())).productionOn,
      trouble,
      changed: delivery === null ? null : { delivery, lines: await linesOf(reader, delivery.id) },
    });
  }

  /** On this page a scan only tells: an order or a note leads to its delivery, a unit to the one that it is on. */
  private async scanned(viewer: Viewer, scan: string): Promise<FoundByScan> {
    const { siteId } = viewer.actor;
    const order = await orNull(findDelivery(this.desk.reader, siteId, scan));
    if (order !== null) {
      const facts = { order: order.orderNumber, status: say(`delivery-now-${order.status}`) };
      return {
        word: order.orderNumber,
        sentence: say('scan-is-order', facts),
        tone: 'quiet',
        href: `/dispatch/${order.id}`,
      };
    }
    const unit = await orNull(findUnit(this.desk.reader, siteId, scan));
    if (unit === null) return { word: say('dock-no'), sentence: say('scan-is-no-unit', { scan }), tone: 'attention' };
    const [palletIds, bagIds] = unit.kind === 'pallet' ? [[unit.id], []] : [[], [unit.id]];
    const [on] = await deliveriesOfUnits(this.desk.reader, { palletIds, bagIds });
    const delivery = on === undefined ? null : await deliveryOf(this.desk.reader, on.deliveryId);
    const facts = { unit: unit.name, order: delivery?.orderNumber ?? null };
    const word = say(unit.kind);
    return delivery === null
      ? { word, sentence: say('scan-on-none', facts), tone: 'quiet' }
      : { word, sentence: say('scan-on-delivery', facts), tone: 'quiet', href: `/dispatch/${delivery.id}` };
  }
}

async function orNull<Found>(search: Promise<Found>): Promise<Found | null> {
  try {
    return await search;
  } catch (error) {
    if (error instanceof NotFound || error instanceof Refusal) return null;
    throw error;
  }
}
