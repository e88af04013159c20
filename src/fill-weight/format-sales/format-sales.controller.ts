import { Controller, Get, Inject, Post } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import type { Asked } from '../../journal/entry-draft.js';
import { May } from '../../platform/actor.js';
import { Clock } from '../../platform/clock.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm, type TakenForScript } from '../../platform/web/sent-form.js';
import { SetFormatSaleForm } from './format-sale.form.js';
import { salesOfSite } from './format-sales.js';
import { formatSalesPage } from './format-sales.page.js';
import { SetFormatSale } from './set-format-sale.js';

/** Where pack formats are sold. */
@ApiExcludeController()
@Controller('set-up/sales')
export class FormatSalesController {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly clock: Clock,
    private readonly setSale: SetFormatSale,
  ) {}

  @Get()
  @May('read')
  list(@Looking() viewer: Viewer): Promise<VNode> {
    return this.page(viewer, null);
  }

  @Post()
  @May('set-up-plant')
  set(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
  ): Promise<VNode | TakenForScript | null> {
    return sent.take({
      form: SetFormatSaleForm,
      times: ['validFrom'],
      timeZone: viewer.timeZone,
      act: (form) => this.setSale.execute(asked, form),
      next: () => '/set-up/sales',
      says: () => ({ code: 'said-sale-set', facts: {} }),
      again: (trouble) => this.page(viewer, trouble),
    });
  }

  private async page(viewer: Viewer, trouble: FormTrouble | null): Promise<VNode> {
    const formats = await salesOfSite(this.reader, viewer.actor.siteId, this.clock.now());
    return formatSalesPage({ viewer, formats, trouble });
  }
}
