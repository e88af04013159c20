import { Body, Controller, Get, Inject, Param, ParseUUIDPipe, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { listed, pageOf, type Listed } from '../platform/web/listed.js';
import type { Asked } from '../journal/entry-draft.js';
import { May, type Actor } from '../platform/actor.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { PageQuery } from '../platform/web/page-query.js';
import { Acting, Asking } from '../platform/web/request.js';
import { CorrectResult } from './correct-result.js';
import { CorrectSample } from './correct-sample.js';
import { ReportResult, type ReportedResult } from './report-result.js';
import { CorrectResultForm, CorrectSampleForm, ReportResultForm, TakeSampleForm } from './sample.form.js';
import {
  bagsOfSample,
  findSample,
  resultsOfSamples,
  samplePage,
  type SampleResult,
  type SampleRow,
} from './samples.js';
import { TakeSample, type TakenSample } from './take-sample.js';

const id = '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10';
const cover = { bagId: null, dryerId: id, fromAt: '2026-03-12T05:00:00.000Z', untilAt: '2026-03-12T06:00:00.000Z' };
const sampleExample = { id, number: 'S-2026-000123', standsFor: 'hour', ...cover, takenAt: '2026-03-12T05:58:00.000Z' };

/** A sample with its results and the bags that it stands for. */
interface WholeSample {
  readonly sample: SampleRow;
  readonly results: readonly SampleResult[];
  readonly bags: readonly { readonly id: string; readonly number: string }[];
}

@ApiTags('laboratory')
@Controller('api')
export class SampleApi {
  constructor(
    private readonly takeSample: TakeSample,
    private readonly reportResult: ReportResult,
    private readonly correctResult: CorrectResult,
    private readonly correctSample: CorrectSample,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  @Post('samples')
  @May('take-samples')
  @ApiOperation({ summary: 'A sample is taken for a bag, an hour or a shift' })
  @ApiCreatedResponse({ schema: { example: { id, number: 'S-2026-000123', ...cover } } })
  take(@Asking() asked: Asked, @Body() form: TakeSampleForm): Promise<TakenSample> {
    return this.takeSample.execute(asked, form);
  }

  @Get('samples')
  @May('read')
  @ApiOperation({ summary: 'Samples, latest recorded first' })
  @ApiOkResponse({ schema: { example: { items: [sampleExample], next: null } } })
  async list(@Acting() actor: Actor, @Query() query: PageQuery): Promise<Listed<SampleRow>> {
    const page = pageOf(query);
    return listed(await samplePage(this.reader, actor.siteId, page), page);
  }

  @Get('samples/:id')
  @May('read')
  @ApiOperation({ summary: 'One sample with its results and the bags that it stands for' })
  @ApiOkResponse({ schema: { example: { sample: sampleExample, results: [], bags: [] } } })
  async one(@Acting() actor: Actor, @Param('id', ParseUUIDPipe) sampleId: string): Promise<WholeSample> {
    const sample = await findSample(this.reader, actor.siteId, sampleId);
    const results = (await resultsOfSamples(this.reader, [sample.id])).get(sample.id) ?? [];
    const bags = await bagsOfSample(this.reader, sample);
    return { sample, results, bags: bags.map((bag) => ({ id: bag.id, number: bag.number })) };
  }

  @Post('results')
  @May('report-results')
  @ApiOperation({ summary: 'The laboratory reports a result' })
  @ApiCreatedResponse({
    schema: { example: { id, sampleNumber: 'S-2026-000123', isRetest: false, verdict: 'within' } },
  })
  report(@Asking() asked: Asked, @Body() form: ReportResultForm): Promise<ReportedResult> {
    return this.reportResult.execute(asked, form);
  }

  @Post('results/:id/correction')
  @May('report-results')
  @ApiOperation({ summary: 'A result was never measured, or was typed wrong' })
  @ApiCreatedResponse({ schema: { example: { id, sampleId: id } } })
  correct(
    @Asking() asked: Asked,
    @Param('id', ParseUUIDPipe) resultId: string,
    @Body() form: CorrectResultForm,
  ): Promise<{ id: string | null; sampleId: string }> {
    return this.correctResult.execute(asked, resultId, form);
  }

  @Post('sample-corrections')
  @May('correct')
  @ApiOperation({ summary: 'A sample was not taken, or was entered for the wrong thing' })
  @ApiCreatedResponse({ schema: { example: { id, number: 'S-2026-000123' } } })
  withdraw(@Asking() asked: Asked, @Body() form: CorrectSampleForm): Promise<{ id: string; number: string }> {
    return this.correctSample.execute(asked, form);
  }
}
