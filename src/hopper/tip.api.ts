import { Body, Controller, Get, Inject, Param, ParseUUIDPipe, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { listed, pageOf } from '../platform/web/listed.js';
import type { Asked } from '../journal/entry-draft.js';
import { May, MayBeQueued, type Actor } from '../platform/actor.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { Acting, Asking } from '../platform/web/request.js';
import { CorrectTip } from './correct-tip.js';
import { EndTip } from './end-tip.js';
import { endTipExample, tipExample, tipRowExample } from './hopper.examples.js';
import { SettleCandidate } from './settle-candidate.js';
import { TipBag } from './tip-bag.js';
import { TipOneOfSeveral } from './tip-one-of-several.js';
import { TipReworkBin } from './tip-rework-bin.js';
import {
  CorrectTipForm,
  EndTipForm,
  SettleCandidateForm,
  TipBagForm,
  TipOneOfSeveralForm,
  TipQuery,
  TipReworkBinForm,
} from './tip.form.js';
import { candidatesOfTip, tipOf, tipPage } from './tips.js';

@ApiTags('tips')
@Controller('api/tips')
export class TipApi {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly tipBag: TipBag,
    private readonly tipOneOfSeveral: TipOneOfSeveral,
    private readonly tipReworkBin: TipReworkBin,
    private readonly endTip: EndTip,
  ) {}

  @Get()
  @May('read')
  @ApiOperation({ summary: 'Tips, the last recorded first; of one hopper where given' })
  @ApiOkResponse({ schema: { example: { items: [tipRowExample], next: null } } })
  async list(@Acting() actor: Actor, @Query() query: TipQuery) {
    const page = pageOf(query);
    return listed(await tipPage(this.reader, actor.siteId, { ...page, hopperId: query.hopperId ?? null }), page);
  }

  @Get(':id')
  @May('read')
  @ApiOperation({ summary: 'One tip, with the bags that it may have been' })
  @ApiOkResponse({ schema: { example: { tip: tipRowExample, candidateIds: [] } } })
  async one(@Acting() actor: Actor, @Param('id', ParseUUIDPipe) id: string) {
    return { tip: await tipOf(this.reader, actor.siteId, id), candidateIds: await candidatesOfTip(this.reader, id) };
  }

  @Post()
  @May('tip-bags')
  @MayBeQueued()
  @ApiOperation({ summary: 'A bag’s spout is opened over a hopper' })
  @ApiCreatedResponse({ schema: { example: tipExample } })
  tip(@Asking() asked: Asked, @Body() form: TipBagForm) {
    return this.tipBag.execute(asked, form);
  }

  @Post('one-of-several')
  @May('tip-bags')
  @MayBeQueued()
  @ApiOperation({ summary: 'A bag is tipped whose number nobody can read: it was one of several' })
  oneOfSeveral(@Asking() asked: Asked, @Body() form: TipOneOfSeveralForm) {
    return this.tipOneOfSeveral.execute(asked, form);
  }

  @Post('rework-bin')
  @May('tip-bags')
  @MayBeQueued()
  @ApiOperation({ summary: 'A rework bin goes back into a hopper' })
  reworkBin(@Asking() asked: Asked, @Body() form: TipReworkBinForm) {
    return this.tipReworkBin.execute(asked, form);
  }

  @Post(':id/off')
  @May('tip-bags')
  @MayBeQueued()
  @ApiOperation({ summary: 'The bag is off: empty, or weighed back' })
  @ApiCreatedResponse({ schema: { example: endTipExample } })
  off(@Asking() asked: Asked, @Param('id', ParseUUIDPipe) id: string, @Body() form: EndTipForm) {
    return this.endTip.execute(asked, id, form);
  }
}

@ApiTags('tips')
@Controller('api/tips')
export class TipCorrectionApi {
  constructor(
    private readonly correctTip: CorrectTip,
    private readonly settleCandidate: SettleCandidate,
  ) {}

  @Post(':id/corrections')
  @May('correct')
  @ApiOperation({ summary: 'A tip did not occur, or was of another bag or time' })
  correct(@Asking() asked: Asked, @Param('id', ParseUUIDPipe) id: string, @Body() form: CorrectTipForm) {
    return this.correctTip.execute(asked, id, form);
  }

  @Post(':id/settlements')
  @May('correct')
  @ApiOperation({ summary: 'Which of several bags it was' })
  settle(@Asking() asked: Asked, @Param('id', ParseUUIDPipe) id: string, @Body() form: SettleCandidateForm) {
    return this.settleCandidate.execute(asked, id, form);
  }
}
