import { Body, Controller, Get, Inject, Post } from '@nestjs/common';
import { ApiCreatedResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../journal/entry-draft.js';
import { May, type Actor } from '../platform/actor.js';
import { Clock } from '../platform/clock.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { Acting, Asking } from '../platform/web/request.js';
import { AddScale } from './add-scale.js';
import { CheckScale, type ScaleChecked } from './check-scale.js';
import type { ScaleStanding } from './plant-rows.js';
import { AddScaleForm, CheckScaleForm, VerifyScaleForm } from './scale.form.js';
import { VerifyScale } from './verify-scale.js';
import { scalesAt } from './whole-plant.js';

const id = '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10';

@ApiTags('plant')
@Controller('api/plant')
export class ScaleApi {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly clock: Clock,
    private readonly addScale: AddScale,
    private readonly checkScale: CheckScale,
    private readonly verifyScale: VerifyScale,
  ) {}

  @Get('scales')
  @May('read')
  @ApiOperation({ summary: 'Scales: when checked, overdue or failed, verified for trade until when' })
  async list(@Acting() actor: Actor): Promise<{ readonly items: readonly ScaleStanding[]; readonly next: null }> {
    return { items: await scalesAt(this.reader, actor.siteId, this.clock.now()), next: null };
  }

  @Post('scales')
  @May('set-up-plant')
  @ApiOperation({ summary: 'Set up a scale' })
  @ApiCreatedResponse({ schema: { example: { id } } })
  add(@Asking() asked: Asked, @Body() form: AddScaleForm): Promise<{ readonly id: string }> {
    return this.addScale.execute(asked, form);
  }

  @Post('scale-checks')
  @May('check-scales')
  @ApiOperation({ summary: 'A scale was checked with known weights' })
  @ApiCreatedResponse({ schema: { example: { id, passed: true, dueAt: '2026-03-13T06:00:00.000Z' } } })
  check(@Asking() asked: Asked, @Body() form: CheckScaleForm): Promise<ScaleChecked> {
    return this.checkScale.execute(asked, form);
  }

  @Post('scale-verifications')
  @May('set-up-plant')
  @ApiOperation({ summary: 'A scale was verified for trade' })
  @ApiCreatedResponse({ schema: { example: { id } } })
  verify(@Asking() asked: Asked, @Body() form: VerifyScaleForm): Promise<{ readonly id: string }> {
    return this.verifyScale.execute(asked, form);
  }
}
