import { Body, Controller, Post } from '@nestjs/common';
import { ApiCreatedResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../journal/entry-draft.js';
import { May } from '../platform/actor.js';
import { Asking } from '../platform/web/request.js';
import { startRunExample } from './hopper.examples.js';
import { StartRunForm } from './hopper.form.js';
import { StartRun } from './start-run.js';

/** A run is started here, because it may start only on what the hopper holds. */
@ApiTags('packing runs')
@Controller('api/runs')
export class RunStartApi {
  constructor(private readonly startRun: StartRun) {}

  @Post()
  @May('run-line')
  @ApiOperation({ summary: 'Start a run of a format on a line' })
  @ApiCreatedResponse({ schema: { example: startRunExample } })
  start(@Asking() asked: Asked, @Body() form: StartRunForm) {
    return this.startRun.execute(asked, form);
  }
}
