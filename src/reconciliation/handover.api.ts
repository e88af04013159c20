import { Body, Controller, Get, Inject, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../journal/entry-draft.js';
import { May, type Actor } from '../platform/actor.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { Acting, Asking } from '../platform/web/request.js';
import { ConfirmOpening } from './confirm-opening.js';
import { AnswerHandoverForm, SignHandoverForm } from './handover.form.js';
import { handoverOf, type HandoverRow } from './handovers.js';
import { SignHandover, type HandoverSigned } from './sign-handover.js';

@ApiTags('handovers')
@Controller('api/handovers')
export class HandoverApi {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly signHandover: SignHandover,
    private readonly confirmOpening: ConfirmOpening,
  ) {}

  @Post()
  @May('sign-accounts')
  @ApiOperation({
    summary: 'The outgoing lead signs alone; both sign on the page of the line, where the other shows a badge',
  })
  sign(@Asking() asked: Asked, @Body() form: SignHandoverForm): Promise<HandoverSigned> {
    return this.signHandover.execute(asked, form, null);
  }

  @Get(':id')
  @May('read')
  @ApiOperation({ summary: 'One handover: its points as they were frozen, and who took the line over' })
  one(@Acting() actor: Actor, @Param('id', ParseUUIDPipe) id: string): Promise<HandoverRow> {
    return handoverOf(this.reader, actor.siteId, id);
  }

  @Post(':id/answers')
  @May('run-line')
  @ApiOperation({ summary: 'Whoever opens the line next confirms the opening, or says what is not agreed' })
  answer(@Asking() asked: Asked, @Param('id', ParseUUIDPipe) id: string, @Body() form: AnswerHandoverForm) {
    return this.confirmOpening.execute(asked, id, form);
  }
}
