import { Controller, Inject, Param, ParseIntPipe, Post } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { Asked } from '../../journal/entry-draft.js';
import { May } from '../../platform/actor.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm } from '../../platform/web/sent-form.js';
import { keyedFor, pageOfRow } from './page-of-row.js';
import { StrikeRowForm } from './paper-form.form.js';
import { findPaperForm } from './paper-forms.js';
import { PaperSheets } from './paper-sheets.js';
import { StrikePaperRow } from './strike-paper-row.js';
import { TakeBackStrike } from './take-back-strike.js';

/** Rows that give no entry are struck, and a strike in error is taken back. */
@ApiExcludeController()
@Controller('paper-forms')
export class PaperStrikesController {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly sheets: PaperSheets,
    private readonly strikeRow: StrikePaperRow,
    private readonly takeBackStrike: TakeBackStrike,
  ) {}

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

  @Post(':number/rows/:row/take-back')
  @May('keep-paper-forms')
  takeBack(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('number') number: string,
    @Param('row', ParseIntPipe) row: number,
  ) {
    return sent.take({
      form: StrikeRowForm,
      timeZone: viewer.timeZone,
      act: ({ reason }) => this.takeBackStrike.execute(asked, { sheet: number, row, reason }),
      next: ({ sheet }) => pageOfRow(sheet, row),
      says: () => ({ code: 'said-strike-taken-back', facts: { row } }),
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
}
