import { Controller, Get, Inject, Param, ParseIntPipe, Post, Query } from '@nestjs/common';
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
import { PaperFormsQuery, PrintPaperFormsForm, SheetQuery, StrikeRowForm } from './paper-form.form.js';
import { findPaperForm, paperFormPage } from './paper-forms.js';
import { paperFormsPage } from './paper-forms.page.js';
import { PaperSheets } from './paper-sheets.js';
import { PrintPaperForm } from './print-paper-form.js';
import { StrikePaperRow } from './strike-paper-row.js';

/** Sheets for a night without the server: printed ahead, and what became of their rows. */
@ApiExcludeController()
@Controller('paper-forms')
export class PaperFormsController {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly sheets: PaperSheets,
    private readonly printForm: PrintPaperForm,
    private readonly strikeRow: StrikePaperRow,
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

  @Post(':number/rows/:row/strike')
  @May('keep-paper-forms')
  strike(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('number') number: string,
    @Param('row', ParseIntPipe) row: number,
  ) {
    return sent.take({
      form: StrikeRowForm,
      timeZone: viewer.timeZone,
      act: async ({ reason }) => {
        const struck = await this.strikeRow.execute(asked, { sheet: number, row, reason });
        return { ...struck, next: await this.sheets.nextRow(viewer.actor.siteId, struck.sheet, row) };
      },
      next: ({ sheet, next }) => pageOfRow(sheet, next),
      says: () => ({ code: 'said-row-struck', facts: { row } }),
      again: (trouble) => this.sheets.page(viewer, { number, row, trouble }),
    });
  }

  /** All rows that are blank: each is struck by an entry of its own. */
  @Post(':number/strikes')
  @May('keep-paper-forms')
  strikeRest(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('number') number: string,
  ) {
    return sent.take({
      form: StrikeRowForm,
      timeZone: viewer.timeZone,
      act: async ({ reason }) => {
        const { facts, rows } = await findPaperForm(this.reader, viewer.actor.siteId, number);
        const blank = rows.filter(({ state }) => state === 'blank');
        for (const { row } of blank) {
          await this.strikeRow.execute(keyedFor(asked, String(row)), { sheet: facts.number, row, reason });
        }
        return blank.length;
      },
      next: () => `/paper-forms/${number}`,
      says: (count) => ({ code: 'said-rows-struck', facts: { count } }),
      again: (trouble) => this.sheets.page(viewer, { number, row: null, trouble }),
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

/** A key of its own for each entry that one form makes. */
function keyedFor(asked: Asked, part: string): Asked {
  return { ...asked, key: asked.key === null ? null : `${asked.key.slice(0, 48)}-${part}` };
}

/** Where keying in goes on. */
export function pageOfRow(sheet: string, row: number | null): string {
  return row === null ? `/paper-forms/${sheet}` : `/paper-forms/${sheet}?row=${row}#row`;
}
