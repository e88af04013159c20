import { applyDecorators, Body, Controller, HttpCode, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { CorrectEmpty } from '../hopper/correct-empty.js';
import { CorrectTip } from '../hopper/correct-tip.js';
import { EndTip } from '../hopper/end-tip.js';
import { CorrectEmptyForm, ProveEmptyForm } from '../hopper/hopper.form.js';
import { ProveEmpty } from '../hopper/prove-empty.js';
import { SettleCandidate } from '../hopper/settle-candidate.js';
import { TipBag } from '../hopper/tip-bag.js';
import { CorrectTipForm, EndTipForm, SettleCandidateForm, TipBagForm } from '../hopper/tip.form.js';
import type { Asked } from '../journal/entry-draft.js';
import { May } from '../platform/actor.js';
import { Trying } from '../platform/web/request.js';
import { CorrectionRipple } from './correction-ripple.js';
import { rippleExample } from './ripple.examples.js';
import type { Ripple } from './ripple.js';

/** A route that changes nothing and says what another would change. */
export const Preview = (what: string) =>
  applyDecorators(
    HttpCode(200),
    ApiOperation({
      summary: `What ${what} would change: lots, pallets, deliveries, holds. Nothing is recorded`,
      description:
        'Send `mark` with the correction as the header `Preview-Mark`: it is refused where it would now change something else.',
    }),
    ApiOkResponse({ schema: { example: rippleExample } }),
  );

@ApiTags('previews')
@Controller('api')
export class TipPreviewApi {
  // eslint-disable-next-line max-params -- what happens at a hopper is corrected by as many commands
  constructor(
    private readonly ripple: CorrectionRipple,
    private readonly tipBag: TipBag,
    private readonly endTip: EndTip,
    private readonly correctTip: CorrectTip,
    private readonly settleCandidate: SettleCandidate,
    private readonly proveEmpty: ProveEmpty,
    private readonly correctEmpty: CorrectEmpty,
  ) {}

  @Post('tips/preview')
  @May('tip-bags')
  @Preview('a tip, entered late')
  tip(@Trying() asked: Asked, @Body() form: TipBagForm): Promise<Ripple> {
    return this.ripple.of(asked, (trying) => this.tipBag.execute(trying, form));
  }

  @Post('tips/:id/off/preview')
  @May('tip-bags')
  @Preview('the end of a tip, entered late,')
  off(@Trying() asked: Asked, @Param('id', ParseUUIDPipe) id: string, @Body() form: EndTipForm): Promise<Ripple> {
    return this.ripple.of(asked, (trying) => this.endTip.execute(trying, id, form));
  }

  @Post('tips/:id/corrections/preview')
  @May('correct')
  @Preview('the correction of a tip')
  correct(
    @Trying() asked: Asked,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() form: CorrectTipForm,
  ): Promise<Ripple> {
    return this.ripple.of(asked, (trying) => this.correctTip.execute(trying, id, form));
  }

  @Post('tips/:id/settlements/preview')
  @May('correct')
  @Preview('naming one of several bags')
  settle(
    @Trying() asked: Asked,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() form: SettleCandidateForm,
  ): Promise<Ripple> {
    return this.ripple.of(asked, (trying) => this.settleCandidate.execute(trying, id, form));
  }

  @Post('hoppers/:id/empties/preview')
  @May('prove-empty')
  @Preview('a proven empty, entered late,')
  prove(@Trying() asked: Asked, @Param('id', ParseUUIDPipe) id: string, @Body() form: ProveEmptyForm): Promise<Ripple> {
    return this.ripple.of(asked, (trying) => this.proveEmpty.execute(trying, id, form));
  }

  @Post('hopper-periods/:id/empty/correction/preview')
  @May('prove-empty')
  @Preview('moving or withdrawing a proven empty')
  empty(
    @Trying() asked: Asked,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() form: CorrectEmptyForm,
  ): Promise<Ripple> {
    return this.ripple.of(asked, (trying) => this.correctEmpty.execute(trying, id, form));
  }
}
