import { Body, Controller, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiCreatedResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../journal/entry-draft.js';
import { May } from '../platform/actor.js';
import { Asking } from '../platform/web/request.js';
import { AddCoder } from './add-coder.js';
import { CorrectCoderClock, type CorrectCoderClockAnswer } from './correct-coder-clock.js';
import { AddCoderForm, CorrectCoderClockForm, SetCoderClockForm } from './machine.form.js';
import { SetCoderClock } from './set-coder-clock.js';

const added = { schema: { example: { id: '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10' } } };

@ApiTags('plant')
@Controller('api/plant')
export class CodersApi {
  constructor(
    private readonly addCoder: AddCoder,
    private readonly setCoderClock: SetCoderClock,
    private readonly correctCoderClock: CorrectCoderClock,
  ) {}

  @Post('coders')
  @May('set-up-plant')
  @ApiOperation({ summary: 'Set up a coder on a line' })
  @ApiCreatedResponse(added)
  coder(@Asking() asked: Asked, @Body() form: AddCoderForm): Promise<{ readonly id: string }> {
    return this.addCoder.execute(asked, form);
  }

  @Post('coder-clocks')
  @May('run-line')
  @ApiOperation({ summary: 'How far a coder’s clock is ahead of the plant’s, as compared' })
  @ApiCreatedResponse({ schema: { example: { ...added.schema.example, validFrom: '2026-03-12T06:00:00.000Z' } } })
  clock(@Asking() asked: Asked, @Body() form: SetCoderClockForm) {
    return this.setCoderClock.execute(asked, form);
  }

  @Post('coder-clocks/:id/correction')
  @May('correct-coder-clocks')
  @ApiOperation({ summary: 'A comparison of a coder’s clock was wrong, or was none' })
  @ApiCreatedResponse({ schema: { example: { ...added.schema.example, clockId: added.schema.example.id } } })
  correction(
    @Asking() asked: Asked,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() form: CorrectCoderClockForm,
  ): Promise<CorrectCoderClockAnswer> {
    return this.correctCoderClock.execute(asked, id, form);
  }
}
