import { Body, Controller, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CorrectHandSample } from '../fill-weight/correct-hand-sample.js';
import { CorrectHandSampleForm } from '../fill-weight/hand-sample.form.js';
import type { Asked } from '../journal/entry-draft.js';
import { CorrectCoderChange } from '../packing/correct-coder-change.js';
import { CorrectCount } from '../packing/correct-count.js';
import { CorrectFilmUse } from '../packing/correct-film-use.js';
import { CorrectRemoval } from '../packing/correct-removal.js';
import {
  CorrectCoderChangeForm,
  CorrectCountForm,
  CorrectFilmUseForm,
  CorrectRemovalForm,
} from '../packing/correction.form.js';
import { CountPacks } from '../packing/count-packs.js';
import { CountPacksForm } from '../packing/packing-run.form.js';
import { RemoveSugar } from '../packing/remove-sugar.js';
import { RemoveSugarForm } from '../packing/removal.form.js';
import { May } from '../platform/actor.js';
import { Trying } from '../platform/web/request.js';
import { CorrectionRipple } from './correction-ripple.js';
import type { Ripple } from './ripple.js';
import { Preview } from './tip-preview.api.js';

@ApiTags('previews')
@Controller('api')
export class RunPreviewApi {
  // eslint-disable-next-line max-params -- what happens on a run is corrected by as many commands
  constructor(
    private readonly ripple: CorrectionRipple,
    private readonly countPacks: CountPacks,
    private readonly correctCount: CorrectCount,
    private readonly correctCoderChange: CorrectCoderChange,
    private readonly correctFilmUse: CorrectFilmUse,
    private readonly removeSugar: RemoveSugar,
    private readonly correctRemoval: CorrectRemoval,
    private readonly correctHandSample: CorrectHandSample,
  ) {}

  @Post('runs/:id/counts/preview')
  @May('count-packs')
  @Preview('a count, entered late,')
  late(@Trying() asked: Asked, @Param('id', ParseUUIDPipe) id: string, @Body() form: CountPacksForm): Promise<Ripple> {
    return this.ripple.of(asked, (trying) => this.countPacks.execute(trying, id, form));
  }

  @Post('counts/:id/correction/preview')
  @May('correct')
  @Preview('the correction of a count')
  count(
    @Trying() asked: Asked,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() form: CorrectCountForm,
  ): Promise<Ripple> {
    return this.ripple.of(asked, (trying) => this.correctCount.execute(trying, id, form));
  }

  @Post('codes/:id/correction/preview')
  @May('correct')
  @Preview('the correction of a coder change')
  code(
    @Trying() asked: Asked,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() form: CorrectCoderChangeForm,
  ): Promise<Ripple> {
    return this.ripple.of(asked, (trying) => this.correctCoderChange.execute(trying, id, form));
  }

  @Post('film-uses/:id/correction/preview')
  @May('correct')
  @Preview('the correction of a film lot on a run')
  film(
    @Trying() asked: Asked,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() form: CorrectFilmUseForm,
  ): Promise<Ripple> {
    return this.ripple.of(asked, (trying) => this.correctFilmUse.execute(trying, id, form));
  }

  @Post('removals/preview')
  @May('run-line')
  @Preview('rejects, a sample or sweepings, entered late,')
  lateRemoval(@Trying() asked: Asked, @Body() form: RemoveSugarForm): Promise<Ripple> {
    return this.ripple.of(asked, (trying) => this.removeSugar.execute(trying, form));
  }

  @Post('removals/:id/correction/preview')
  @May('correct')
  @Preview('the correction of rejects, a sample or sweepings')
  removal(
    @Trying() asked: Asked,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() form: CorrectRemovalForm,
  ): Promise<Ripple> {
    return this.ripple.of(asked, (trying) => this.correctRemoval.execute(trying, id, form));
  }

  @Post('hand-samples/:id/correction/preview')
  @May('correct')
  @Preview('the correction of a hand sample')
  sample(
    @Trying() asked: Asked,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() form: CorrectHandSampleForm,
  ): Promise<Ripple> {
    return this.ripple.of(asked, (trying) => this.correctHandSample.execute(trying, id, form));
  }
}
