import { Controller, Get, Inject, Post } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import { receiptPage } from '../../drying/goods-receipts.js';
import { ReceiveBags } from '../../drying/receive-bags.js';
import type { Asked } from '../../journal/entry-draft.js';
import { bagTypeOf, bagTypesOf } from '../../plant/bag-types.js';
import { gradesOf, placesOf, scalesAt } from '../../plant/whole-plant.js';
import { May } from '../../platform/actor.js';
import { Clock } from '../../platform/clock.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm, type TakenForScript } from '../../platform/web/sent-form.js';
import { ReceiptHereForm, weighedBags } from './receipt-here.form.js';
import { receiptsPage } from './receipts.page.js';

/** Bags that a supplier brought: one form for the delivery, one line for each bag. */
@ApiExcludeController()
@Controller('dryer/receipts')
export class ReceiptsController {
  constructor(
    private readonly receiveBags: ReceiveBags,
    private readonly clock: Clock,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  @Get()
  @May('read')
  show(@Looking() viewer: Viewer): Promise<VNode> {
    return this.page(viewer, null);
  }

  @Post()
  @May('receive-goods')
  receive(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
  ): Promise<VNode | TakenForScript | null> {
    return sent.take({
      form: ReceiptHereForm,
      timeZone: viewer.timeZone,
      act: async (form) => {
        const type = await bagTypeOf(this.reader, viewer.actor.siteId, form.bagTypeId);
        const { gradeId, supplierCode, supplierLot, documentNumber, scaleId } = form;
        const head = { gradeId, supplierCode, supplierLot, documentNumber, scaleId };
        return this.receiveBags.execute(asked, { ...head, bags: [...weighedBags(form, type)] });
      },
      next: () => '/dryer/receipts',
      says: ({ number, bags }) => ({ code: 'receipts-taken', facts: { receipt: number, count: bags.length } }),
      again: (trouble) => this.page(viewer, trouble),
    });
  }

  private async page(viewer: Viewer, trouble: FormTrouble | null): Promise<VNode> {
    const { siteId } = viewer.actor;
    return receiptsPage({
      viewer,
      trouble,
      receipts: await receiptPage(this.reader, siteId, { before: null, limit: 12 }),
      grades: await gradesOf(this.reader, siteId),
      bagTypes: await bagTypesOf(this.reader, siteId),
      scales: (await scalesAt(this.reader, siteId, this.clock.now())).map(({ scale }) => scale),
      places: await placesOf(this.reader, siteId),
    });
  }
}
