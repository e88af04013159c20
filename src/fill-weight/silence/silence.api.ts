import { Body, Controller, Get, Inject, Param, ParseUUIDPipe, Post, Res } from '@nestjs/common';
import { ApiCreatedResponse, ApiExcludeEndpoint, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { FastifyReply } from 'fastify';
import type { Asked } from '../../journal/entry-draft.js';
import { May, type Actor } from '../../platform/actor.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { Acting, Asking } from '../../platform/web/request.js';
import { SetSilence } from './set-silence.js';
import { SetSilenceForm } from './set-silence.form.js';
import { silenceOf } from './silences.js';

@ApiTags('fill weights')
@Controller()
export class SilenceApi {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly setSilence: SetSilence,
  ) {}

  @Post('api/pack-weighers/:id/silence')
  @May('plan-checks')
  @ApiOperation({ summary: 'How long a pack weigher may send nothing while packs are counted' })
  @ApiCreatedResponse({ schema: { example: { id: '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10' } } })
  set(@Asking() asked: Asked, @Param('id', ParseUUIDPipe) weigherId: string, @Body() form: SetSilenceForm) {
    return this.setSilence.execute(asked, weigherId, form);
  }

  /** Where the open point of a silence leads: to the weights of its run. */
  @Get('weigher-silences/:id')
  @May('read')
  @ApiExcludeEndpoint()
  async one(@Acting() actor: Actor, @Param('id', ParseUUIDPipe) id: string, @Res() reply: FastifyReply): Promise<void> {
    const { runId } = await silenceOf(this.reader, actor.siteId, id);
    await reply.redirect(`/runs/${runId}/weights#unverified`, 303);
  }
}
