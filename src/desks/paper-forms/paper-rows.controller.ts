import { Controller, Param, ParseIntPipe, Post } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { Asked } from '../../journal/entry-draft.js';
import { May } from '../../platform/actor.js';
import type { Instant } from '../../platform/clock.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm } from '../../platform/web/sent-form.js';
import type { FormKind } from './form-kinds.js';
import { KeyInRows } from './key-in-rows.js';
import {
  WrittenCheckForm,
  WrittenCountForm,
  WrittenPalletForm,
  WrittenRemovalForm,
  WrittenRestartForm,
  WrittenStopForm,
  WrittenTipEndForm,
  WrittenTipForm,
} from './paper-form.form.js';
import { pageOfRow } from './page-of-row.js';
import { PaperSheets } from './paper-sheets.js';
import type { RowAt } from './row-at.js';

/** Which row of which sheet somebody keys in. */
interface On {
  readonly sent: SentForm;
  readonly asked: Asked;
  readonly viewer: Viewer;
  readonly number: string;
  readonly row: number;
}

/** Rows of a sheet, keyed in one by one with their written times. */
@ApiExcludeController()
@Controller('paper-forms/:number/rows/:row')
export class PaperRowsController {
  constructor(
    private readonly sheets: PaperSheets,
    private readonly keyIn: KeyInRows,
  ) {}

  @Post('tips')
  @May('tip-bags')
  tip(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('number') number: string,
    @Param('row', ParseIntPipe) row: number,
  ) {
    return this.take({ sent, asked, viewer, number, row }, 'tips', WrittenTipForm, (at, form) =>
      this.keyIn.tips.tip(at, form),
    );
  }

  @Post('tip-end')
  @May('tip-bags')
  tipEnd(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('number') number: string,
    @Param('row', ParseIntPipe) row: number,
  ) {
    return this.take({ sent, asked, viewer, number, row }, 'tips', WrittenTipEndForm, (at, form) =>
      this.keyIn.tips.end(at, form),
    );
  }

  @Post('pallets')
  @May('build-pallets')
  pallet(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('number') number: string,
    @Param('row', ParseIntPipe) row: number,
  ) {
    return this.take({ sent, asked, viewer, number, row }, 'pallets', WrittenPalletForm, (at, form) =>
      this.keyIn.packs.pallet(at, form),
    );
  }

  @Post('stops')
  @May('run-line')
  stop(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('number') number: string,
    @Param('row', ParseIntPipe) row: number,
  ) {
    return this.take({ sent, asked, viewer, number, row }, 'stops', WrittenStopForm, (at, form) =>
      this.keyIn.stops.stop(at, form),
    );
  }

  @Post('restart')
  @May('run-line')
  restart(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('number') number: string,
    @Param('row', ParseIntPipe) row: number,
  ) {
    return this.take({ sent, asked, viewer, number, row }, 'stops', WrittenRestartForm, (at, form) =>
      this.keyIn.stops.again(at, form),
    );
  }

  @Post('counts')
  @May('count-packs')
  count(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('number') number: string,
    @Param('row', ParseIntPipe) row: number,
  ) {
    return this.take({ sent, asked, viewer, number, row }, 'counts', WrittenCountForm, (at, form) =>
      this.keyIn.packs.count(at, form),
    );
  }

  @Post('removals')
  @May('run-line')
  removal(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('number') number: string,
    @Param('row', ParseIntPipe) row: number,
  ) {
    return this.take({ sent, asked, viewer, number, row }, 'removals', WrittenRemovalForm, (at, form) =>
      this.keyIn.packs.removal(at, form),
    );
  }

  @Post('checks')
  @May('check-line')
  check(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('number') number: string,
    @Param('row', ParseIntPipe) row: number,
  ) {
    return this.take({ sent, asked, viewer, number, row }, 'checks', WrittenCheckForm, (at, form) =>
      this.keyIn.checks.check(at, form),
    );
  }

  private take<Form extends object>(
    { sent, asked, viewer, number, row }: On,
    kind: FormKind,
    form: new () => Form,
    keyIn: (at: RowAt, form: Form) => Promise<Instant>,
  ) {
    const { timeZone } = viewer;
    return sent.take({
      form,
      timeZone,
      act: async (entered) => {
        const at = await this.sheets.rowAt(kind, { asked, number, row, timeZone });
        const { happenedAt, isKept } = await this.keyIn.takeOrKeep(at, entered, keyIn);
        const sheet = at.sheet.facts.number;
        return { sheet, happenedAt, isKept, next: await this.sheets.nextRow(viewer.actor.siteId, sheet, row) };
      },
      next: ({ sheet, next }) => pageOfRow(sheet, next),
      says: ({ happenedAt, isKept }) => {
        return { code: isKept ? 'said-row-kept' : 'said-row-keyed', facts: { row, at: happenedAt } };
      },
      again: (trouble) => this.sheets.page(viewer, { number, row, trouble }),
    });
  }
}
