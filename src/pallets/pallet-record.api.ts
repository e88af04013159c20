import { Body, Controller, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../journal/entry-draft.js';
import { May } from '../platform/actor.js';
import { Asking } from '../platform/web/request.js';
import { CheckPalletLabel, type LabelCheckAnswer } from './check-pallet-label.js';
import { CorrectPallet } from './correct-pallet.js';
import { LabelPallet } from './label-pallet.js';
import { CheckPalletLabelForm } from './pallet-label.form.js';
import { CorrectPalletForm } from './pallet.form.js';

/** What concerns the record of a pallet: its label, and its correction. */
@ApiTags('pallets')
@Controller('api/pallets/:id')
export class PalletRecordApi {
  constructor(
    private readonly labelPallet: LabelPallet,
    private readonly correctPallet: CorrectPallet,
    private readonly checkLabel: CheckPalletLabel,
  ) {}

  @Post('label-checks')
  @May('build-pallets')
  @ApiOperation({ summary: 'The label that sticks on a pallet was scanned back on it' })
  check(
    @Asking() asked: Asked,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() form: CheckPalletLabelForm,
  ): Promise<LabelCheckAnswer> {
    return this.checkLabel.execute(asked, id, form);
  }

  @Post('labels')
  @May('build-pallets')
  @ApiOperation({ summary: 'Issue a label for a pallet as it is now' })
  label(@Asking() asked: Asked, @Param('id', ParseUUIDPipe) id: string): Promise<{ readonly paperId: string }> {
    return this.labelPallet.execute(asked, id);
  }

  @Post('corrections')
  @May('correct')
  @ApiOperation({ summary: 'Make void the record of a pallet that is not there' })
  correct(
    @Asking() asked: Asked,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() form: CorrectPalletForm,
  ): Promise<{ readonly id: string }> {
    return this.correctPallet.execute(asked, id, form);
  }
}
