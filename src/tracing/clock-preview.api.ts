import { Body, Controller, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import type { Asked } from '../journal/entry-draft.js';
import { CorrectCoderClock } from '../plant/correct-coder-clock.js';
import { CorrectCoderClockForm, SetCoderClockForm } from '../plant/machine.form.js';
import { SetCoderClock } from '../plant/set-coder-clock.js';
import { May } from '../platform/actor.js';
import { Trying } from '../platform/web/request.js';
import { CorrectionRipple } from './correction-ripple.js';
import type { Ripple } from './ripple.js';
import { Preview } from './tip-preview.api.js';

@ApiTags('previews')
@Controller('api/plant/coder-clocks')
export class ClockPreviewApi {
  constructor(
    private readonly ripple: CorrectionRipple,
    private readonly setCoderClock: SetCoderClock,
    private readonly correctCoderClock: CorrectCoderClock,
  ) {}

  @Post('preview')
  @May('run-line')
  @Preview('a comparison of a coder’s clock, entered late,')
  comparison(@Trying() asked: Asked, @Body() form: SetCoderClockForm): Promise<Ripple> {
    return this.ripple.of(asked, (trying) => this.setCoderClock.execute(trying, form));
  }

  @Post(':id/correction/preview')
  @May('correct-coder-clocks')
  @Preview('the correction of a comparison of a coder’s clock')
  correction(
    @Trying() asked: Asked,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() form: CorrectCoderClockForm,
  ): Promise<Ripple> {
    return this.ripple.of(asked, (trying) => this.correctCoderClock.execute(trying, id, form));
  }
}
