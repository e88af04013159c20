import { Body, Controller, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../journal/entry-draft.js';
import { May } from '../platform/actor.js';
import { Asking } from '../platform/web/request.js';
import { CorrectCoderChange } from './correct-coder-change.js';
import { CorrectCount } from './correct-count.js';
import { CorrectFilmUse } from './correct-film-use.js';
import { CorrectLooseCount } from './correct-loose-count.js';
import {
  CorrectCoderChangeForm,
  CorrectCountForm,
  CorrectFilmUseForm,
  CorrectLooseCountForm,
} from './correction.form.js';

@ApiTags('packing runs')
@Controller('api')
export class RunCorrectionApi {
  constructor(
    private readonly correctCount: CorrectCount,
    private readonly correctCoderChange: CorrectCoderChange,
    private readonly correctFilmUse: CorrectFilmUse,
    private readonly correctLooseCount: CorrectLooseCount,
  ) {}

  @Post('counts/:id/correction')
  @May('correct')
  @ApiOperation({ summary: 'A count was wrong, or was never read; a last count carries the close of its run with it' })
  count(@Asking() asked: Asked, @Param('id', ParseUUIDPipe) id: string, @Body() form: CorrectCountForm) {
    return this.correctCount.execute(asked, id, form);
  }

  @Post('codes/:id/correction')
  @May('correct')
  @ApiOperation({ summary: 'A coder change was recorded wrongly, or did not occur' })
  code(@Asking() asked: Asked, @Param('id', ParseUUIDPipe) id: string, @Body() form: CorrectCoderChangeForm) {
    return this.correctCoderChange.execute(asked, id, form);
  }

  @Post('film-uses/:id/correction')
  @May('correct')
  @ApiOperation({ summary: 'A film lot was recorded wrongly, or was not fitted' })
  film(@Asking() asked: Asked, @Param('id', ParseUUIDPipe) id: string, @Body() form: CorrectFilmUseForm) {
    return this.correctFilmUse.execute(asked, id, form);
  }

  @Post('loose-counts/:id/correction')
  @May('correct')
  @ApiOperation({ summary: 'Loose packs were counted wrongly, or not at all' })
  loose(@Asking() asked: Asked, @Param('id', ParseUUIDPipe) id: string, @Body() form: CorrectLooseCountForm) {
    return this.correctLooseCount.execute(asked, id, form);
  }
}
