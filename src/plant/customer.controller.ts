import { Controller, Get, Inject, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import type { Asked } from '../journal/entry-draft.js';
import { May } from '../platform/actor.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import type { FormTrouble } from '../platform/web/form-trouble.js';
import { Asking, Looking, type Viewer } from '../platform/web/request.js';
import { Sent, type SentForm } from '../platform/web/sent-form.js';
import { customerPage } from './customer.page.js';
import { ofSite } from './of-site.js';
import { CustomerPaperLanguageForm } from './paper-language.form.js';
import { customerOf, siteOf } from './plant-facts.js';
import { SetPaperLanguage } from './set-paper-language.js';

@ApiExcludeController()
@Controller('customers')
export class CustomerController {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly setPaperLanguage: SetPaperLanguage,
  ) {}

  @Get(':id')
  @May('read')
  one(@Looking() viewer: Viewer, @Param('id', ParseUUIDPipe) id: string): Promise<VNode> {
    return this.page(viewer, id, null);
  }

  @Post(':id')
  @May('keep-deliveries')
  papers(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
  ) {
    return sent.take({
      form: CustomerPaperLanguageForm,
      timeZone: viewer.timeZone,
      act: (form) => this.setPaperLanguage.forCustomer(asked, id, form),
      next: () => `/customers/${id}`,
      says: () => ({ code: 'customer-papers-said', facts: {} }),
      again: (trouble) => this.page(viewer, id, trouble),
    });
  }

  private async page(viewer: Viewer, id: string, trouble: FormTrouble | null): Promise<VNode> {
    const customer = ofSite(viewer.actor, 'customer', await customerOf(this.reader, id));
    return customerPage({ viewer, customer, site: await siteOf(this.reader, customer.siteId), trouble });
  }
}
