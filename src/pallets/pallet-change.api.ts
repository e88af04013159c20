import { Body, Controller, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../journal/entry-draft.js';
import { May } from '../platform/actor.js';
import { Asking } from '../platform/web/request.js';
import type { PalletAnswer } from './add-pallet.js';
import { MovePallet, type MoveAnswer } from './move-pallet.js';
import { MovePalletForm, ReplacePalletForm, SplitPalletForm, TakeApartForm } from './pallet.form.js';
import { RestackPallet } from './restack-pallet.js';
import { SplitPallet, type SplitAnswer } from './split-pallet.js';
import { TakePalletApart, type TakeApartAnswer } from './take-pallet-apart.js';

/** What happens to a pallet that is there. */
@ApiTags('pallets')
@Controller('api/pallets/:id')
export class PalletChangeApi {
  constructor(
    private readonly movePallet: MovePallet,
    private readonly splitPallet: SplitPallet,
    private readonly restackPallet: RestackPallet,
    private readonly takePalletApart: TakePalletApart,
  ) {}

  @Post('moves')
  @May('move-pallets')
  @ApiOperation({ summary: 'Bring a pallet to a place in the store' })
  move(
    @Asking() asked: Asked,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() form: MovePalletForm,
  ): Promise<MoveAnswer> {
    return this.movePallet.execute(asked, id, form);
  }

  @Post('splits')
  @May('build-pallets')
  @ApiOperation({ summary: 'Make several pallets of one, packs shared out per lot' })
  split(
    @Asking() asked: Asked,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() form: SplitPalletForm,
  ): Promise<SplitAnswer> {
    return this.splitPallet.execute(asked, id, form);
  }

  @Post('restackings')
  @May('build-pallets')
  @ApiOperation({ summary: 'Put all packs of a pallet onto another, with a new SSCC' })
  restack(
    @Asking() asked: Asked,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() form: ReplacePalletForm,
  ): Promise<PalletAnswer> {
    return this.restackPallet.execute(asked, id, 'restacked', form);
  }

  @Post('relabellings')
  @May('build-pallets')
  @ApiOperation({ summary: 'Give a pallet whose label cannot be read another SSCC' })
  relabel(
    @Asking() asked: Asked,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() form: ReplacePalletForm,
  ): Promise<PalletAnswer> {
    return this.restackPallet.execute(asked, id, 'relabelled', form);
  }

  @Post('end')
  @May('build-pallets')
  @ApiOperation({ summary: 'Take a pallet apart; its packs are loose again' })
  end(
    @Asking() asked: Asked,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() form: TakeApartForm,
  ): Promise<TakeApartAnswer> {
    return this.takePalletApart.execute(asked, id, form);
  }
}
