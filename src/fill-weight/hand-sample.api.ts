import { Body, Controller, Get, Inject, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../journal/entry-draft.js';
import { May, type Actor } from '../platform/actor.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { Acting, Asking } from '../platform/web/request.js';
import { findRun } from '../packing/packing-runs.js';
import { CorrectHandSample } from './correct-hand-sample.js';
import { CorrectHandSampleForm, WeighHandSampleForm } from './hand-sample.form.js';
import { handSamplesOf, meanNetOf } from './mean-nets.js';
import { WeighHandSample } from './weigh-hand-sample.js';

const id = '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10';
const limits = { meanMilligrams: 2_001_000, lowerMilligrams: 1_989_447, upperMilligrams: 2_012_553 };
const weighedAt = '2026-03-12T07:41:00.000Z';

@ApiTags('fill weights')
@Controller('api')
export class HandSampleApi {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly weighHandSample: WeighHandSample,
    private readonly correctHandSample: CorrectHandSample,
  ) {}

  @Get('runs/:id/mean-net')
  @May('read')
  @ApiOperation({ summary: 'The mean net of a run’s packs with hard limits, measured or assumed' })
  @ApiOkResponse({ schema: { example: { ...limits, basis: 'measured', samplePackCount: 4, weighedAt } } })
  async meanNet(@Acting() actor: Actor, @Param('id', ParseUUIDPipe) runId: string) {
    return meanNetOf(this.reader, (await findRun(this.reader, actor.siteId, runId)).id);
  }

  @Get('runs/:id/hand-samples')
  @May('read')
  @ApiOperation({ summary: 'The hand samples of a run, in the order of time' })
  async samples(@Acting() actor: Actor, @Param('id', ParseUUIDPipe) runId: string) {
    const run = await findRun(this.reader, actor.siteId, runId);
    return { items: await handSamplesOf(this.reader, run.id), next: null };
  }

  @Post('hand-samples')
  @May('weigh-packs')
  @ApiOperation({ summary: 'Weigh packs of a run by hand' })
  @ApiCreatedResponse({ schema: { example: { id, runId: id, scaleId: id, samplePackCount: 4, ...limits, weighedAt } } })
  weigh(@Asking() asked: Asked, @Body() form: WeighHandSampleForm) {
    return this.weighHandSample.execute(asked, form);
  }

  @Post('hand-samples/:id/correction')
  @May('correct')
  @ApiOperation({ summary: 'A hand sample was recorded wrongly, or did not occur' })
  correct(@Asking() asked: Asked, @Param('id', ParseUUIDPipe) id: string, @Body() form: CorrectHandSampleForm) {
    return this.correctHandSample.execute(asked, id, form);
  }
}
