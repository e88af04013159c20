import { Body, Controller, Get, HttpCode, Inject, Param, ParseUUIDPipe, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../journal/entry-draft.js';
import { May, MayBeQueued, type Actor } from '../platform/actor.js';
import { HeavyReads } from '../platform/database/heavy-reads.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { listed, pageOf, type Listed } from '../platform/web/listed.js';
import { PageQuery } from '../platform/web/page-query.js';
import { Acting, Asking } from '../platform/web/request.js';
import type { PalletAnswer } from './add-pallet.js';
import { BuildPallet } from './build-pallet.js';
import { MergePallets } from './merge-pallets.js';
import { palletPage } from './pallet-list.js';
import type { PalletRow } from './pallet-rows.js';
import { palletView, type PalletView } from './pallet-views.js';
import { BuildPalletForm, MergePalletsForm } from './pallet.form.js';

const builtExample = {
  id: '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10',
  sscc: '095201230000000141',
  packCount: 480,
  isFull: true,
  labelPaperId: '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a11',
};

@ApiTags('pallets')
@Controller('api/pallets')
export class PalletApi {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly heavy: HeavyReads,
    private readonly buildPallet: BuildPallet,
    private readonly mergePallets: MergePallets,
  ) {}

  @Post()
  @May('build-pallets')
  @MayBeQueued()
  @ApiOperation({ summary: 'Put packs onto a pallet: the next of a run, or given ranges of runs' })
  @ApiCreatedResponse({ schema: { example: builtExample } })
  build(@Asking() asked: Asked, @Body() form: BuildPalletForm): Promise<PalletAnswer> {
    return this.buildPallet.execute(asked, form);
  }

  @Post('merges')
  @May('build-pallets')
  @ApiOperation({ summary: 'Make one pallet of several' })
  @ApiCreatedResponse({ schema: { example: builtExample } })
  merge(@Asking() asked: Asked, @Body() form: MergePalletsForm): Promise<PalletAnswer> {
    return this.mergePallets.execute(asked, form);
  }

  @Get()
  @May('read')
  @ApiOperation({ summary: 'Pallets, newest first' })
  async list(@Acting() actor: Actor, @Query() query: PageQuery): Promise<Listed<PalletRow>> {
    const page = pageOf(query);
    return listed(await palletPage(this.reader, actor.siteId, page), page);
  }

  @Get(':id')
  @May('read')
  @HttpCode(200)
  @ApiOperation({ summary: 'One pallet: contents per lot, how it stands and why, the bags it may hold' })
  @ApiOkResponse({ schema: { example: { sscc: '095201230000000141', standing: { state: 'waiting', reasons: [] } } } })
  one(@Acting() actor: Actor, @Param('id', ParseUUIDPipe) id: string): Promise<PalletView> {
    return this.heavy.snapshot((from) => palletView(from, actor.siteId, id));
  }
}
