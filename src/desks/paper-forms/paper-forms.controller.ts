import { Controller, Get, Inject, Param, Post, Query } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import type { Asked } from '../../journal/entry-draft.js';
import { plansOfSite } from '../../line-checks/check-plans.js';
import { May } from '../../platform/actor.js';
import { Clock } from '../../platform/clock.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { listed, pageOf } from '../../platform/web/listed.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm } from '../../platform/web/sent-form.js';
import { linesOf } from '../line/line-rows.js';
import type { FormKind } from './form-kinds.js';
import { PaperFormsQuery, PrintPaperFormsForm, SheetQuery } from './paper-form.form.js';
import { keyedFor } from './page-of-row.js';
import { paperFormPage } from './paper-forms.js';
import { paperFormsPage } from './paper-forms.page.js';
import { PaperSheets } from './paper-sheets.js';
import { PrintPaperForm } from './print-paper-form.js';

/** Sheets for a night without the server: printed ahead, and what became of their rows. */
@ApiExcludeController()
@Controller('paper-forms')
export class PaperFormsController {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly sheets: PaperSheets,
    private readonly printForm: PrintPaperForm,
    private readonly clock: Clock,
  ) {}

  @Get()
  @May('read')
  list(@Looking() viewer: Viewer, @Query() query: PaperFormsQuery): Promise<VNode> {
    return this.page(viewer, query, null);
  }

  @Post()
  @May('keep-paper-forms')
  print(@Sent() sent: SentForm, @Asking() asked: Asked, @Looking() viewer: Viewer) {
    return sent.take({
      form: PrintPaperFormsForm,
      timeZone: viewer.timeZone,
      act: async ({ lineId, kinds }) => {
        const numbers: string[] = [];
        // A sheet of checks may be refused: first, before any other is printed.
        for (const kind of [...new Set(kinds)].sort((one, other) => rank(one) - rank(other))) {
          const one = keyedFor(asked, kind);
          numbers.push((await this.printForm.execute(one, { kind, lineId })).number);
        }
        return numbers;
      },
      next: () => '/paper-forms',
      says: (numbers) => ({ code: 'said-paper-forms', facts: { sheets: numbers.join(', ') } }),
      again: (trouble) => this.page(viewer, {}, trouble),
    });
  }

  @Get(':number')
  @May('read')
  sheet(@Looking() viewer: Viewer, @Param('number') number: string, @Query() query: SheetQuery): Promise<VNode> {
    return this.sheets.page(viewer, {
      ...{ number, row: query.row ?? null, check: query.check ?? null, trouble: null },
    });
  }

  private async page(viewer: Viewer, query: PaperFormsQuery, trouble: FormTrouble | null): Promise<VNode> {
    const { siteId } = viewer.actor;
    const page = pageOf(query);
    const { items: forms, next } = listed(await paperFormPage(this.reader, siteId, page), page);
    const lines = await linesOf(this.reader, siteId);
    const isChecked = (await plansOfSite(this.reader, siteId, this.clock.now())).length > 0;
    return paperFormsPage({ viewer, forms, older: next, lines, lineId: query.line ?? null, isChecked, trouble });
  }
}

/** What is printed first. */
function rank(kind: FormKind): number {
  return kind === 'checks' ? 0 : 1;
}
