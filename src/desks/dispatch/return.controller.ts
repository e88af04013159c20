import { Controller, Get, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import { DecideReturn } from '../../dispatch/decide-return.js';
import { deliveryView, type UnitView } from '../../dispatch/delivery-views.js';
import type { ReturnedUnitForm } from '../../dispatch/return.form.js';
import { TakeBack } from '../../dispatch/take-back.js';
import type { Asked } from '../../journal/entry-draft.js';
import { May } from '../../platform/actor.js';
import { BadForm } from '../../platform/refusal.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm } from '../../platform/web/sent-form.js';
import { DispatchDesk } from './dispatch-desk.js';
import { DecideReturnPageForm, ReturnPageForm } from './dispatch.form.js';
import { storePlaces } from './loading-view.js';
import { returnPage } from './return.page.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';

/** What comes back of a delivery. */
@ApiExcludeController()
@Controller('dispatch/:deliveryId/return')
export class DispatchReturnController {
  constructor(
    private readonly desk: DispatchDesk,
    private readonly takeBack: TakeBack,
    private readonly decideReturn: DecideReturn,
  ) {}

  @Get()
  @May('read')
  one(@Looking() viewer: Viewer, @Param('deliveryId', ParseUUIDPipe) id: string): Promise<VNode> {
    return this.page(viewer, id, {});
  }

  @Post()
  @May('keep-deliveries')
  take(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('deliveryId', ParseUUIDPipe) id: string,
  ) {
    return sent.take({
      form: ReturnPageForm,
      timeZone: viewer.timeZone,
      act: async (form) => {
        const { units } = await this.delivery(viewer, id);
        const { why, remarks = null, placeId } = form;
        return this.takeBack.execute(asked, id, { why, remarks, placeId, units: unitsOf(form, units) });
      },
      next: () => `/dispatch/${id}/return`,
      says: ({ unitIds }) => ({ code: 'said-taken-back', facts: { count: unitIds.length } }),
      again: (trouble) => this.page(viewer, id, { trouble }),
    });
  }

  @Get('decision')
  @May('read')
  again(@Looking() viewer: Viewer, @Param('deliveryId', ParseUUIDPipe) id: string): Promise<VNode> {
    return this.page(viewer, id, {});
  }

  @Post('decision')
  @May('decide')
  decide(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('deliveryId', ParseUUIDPipe) id: string,
  ) {
    return sent.take({
      form: DecideReturnPageForm,
      timeZone: viewer.timeZone,
      act: ({ unit, ...form }) => this.decideReturn.execute(asked, unit, form),
      next: () => `/dispatch/${id}/return`,
      says: () => ({ code: 'said-return-decided', facts: {} }),
      again: (decisionTrouble) => this.page(viewer, id, { decisionTrouble }),
    });
  }

  private async page(
    viewer: Viewer,
    id: string,
    troubles: { readonly trouble?: FormTrouble; readonly decisionTrouble?: FormTrouble },
  ): Promise<VNode> {
    const places = await storePlaces(this.desk.reader, viewer.actor.siteId);
    return returnPage({ viewer, delivery: await this.delivery(viewer, id), places, ...troubles });
  }

  private delivery(viewer: Viewer, id: string) {
    return deliveryView(this.desk.reader, viewer.actor.siteId, id, this.desk.clock.now());
  }
}

/** @throws {BadForm} where nothing was chosen, or loose packs have no count */
function unitsOf(form: ReturnPageForm, on: readonly UnitView[]): ReturnedUnitForm[] {
  const isCredited = form.isCredited ?? false;
  const whole = (form.whole ?? []).map((id): ReturnedUnitForm => {
    const unit = on.find((one) => one.id === id);
    const creditedCount = isCredited ? (unit?.packCount ?? 1) : 0;
    return unit?.kind === 'bulk-bag' ? { bag: id, creditedCount } : { pallet: id, creditedCount };
  });
  const lot = form.lot ?? null;
  const packCount = form.packCount ?? null;
  if ((lot === null) !== (packCount === null) || (lot === null && whole.length === 0)) {
    const field = lot === null && packCount === null ? 'whole' : lot === null ? 'lot' : 'packCount';
    throw new BadForm([{ field, code: 'returned-unit-unclear', facts: {} }]);
  }
  if (lot === null || packCount === null) return whole;
  return [...whole, { lot, packCount, creditedCount: isCredited ? packCount : 0 }];
}
