import { Body, Controller, Get, Inject, Param, ParseUUIDPipe, Post, Put, Query } from '@nestjs/common';
import { ApiBody, ApiConsumes, ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../../journal/entry-draft.js';
import { May, type Actor } from '../../platform/actor.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { NotFound } from '../../platform/refusal.js';
import { fieldOf } from '../../platform/web/problem.filter.js';
import { Acting, Asking } from '../../platform/web/request.js';
import { Streaming, Streams, type StreamedBody } from '../../platform/web/streamed-body.js';
import { instantOf } from '../kept/instants-of-weights.js';
import { packWeigherOf } from '../pack-weighers.js';
import { FileLayoutForm } from './file-layout.form.js';
import { fileLayoutOf } from './file-layouts.js';
import { SetFileLayout } from './set-file-layout.js';
import { StoreWeightFile } from './store-weight-file.js';
import { StoreWeightFileForm, WeightFileQuery } from './weight-file.form.js';
import { WeightFiles } from './weight-files.js';

const id = '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10';
const counts = { lineCount: 500, acceptedCount: 480, repeatedCount: 20, refusedCount: 0, problems: [] };
const first = [{ line: 2, sequence: 1, at: '2026-03-12T07:41:03.410Z', netGrams: 1003.2, head: 3, rejected: false }];
const dryRun = { id, name: 'export.csv', ...counts, runs: [{ run: 'PR-2026-000042', weightCount: 500 }], first };

@ApiTags('fill weights')
@Controller('api')
export class WeightFileApi {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly files: WeightFiles,
    private readonly store: StoreWeightFile,
    private readonly setLayout: SetFileLayout,
  ) {}

  @Get('pack-weighers/:id/file-layout')
  @May('read')
  @ApiOperation({ summary: 'What the columns of a weigher’s files mean' })
  @ApiOkResponse({ schema: { example: { separator: 'semicolon', decimal: 'comma', netColumn: 'Net', unit: 'g' } } })
  async layout(@Acting() actor: Actor, @Param('id', ParseUUIDPipe) weigherId: string) {
    await packWeigherOf(this.reader, actor.siteId, weigherId);
    const saved = await fileLayoutOf(this.reader, weigherId);
    if (saved === null) throw new NotFound('file-layout', weigherId);
    return saved.layout;
  }

  @Put('pack-weighers/:id/file-layout')
  @May('set-up-plant')
  @ApiOperation({ summary: 'Say what the columns of a weigher’s files mean' })
  @ApiOkResponse({ schema: { example: { id } } })
  set(@Asking() asked: Asked, @Param('id', ParseUUIDPipe) weigherId: string, @Body() form: FileLayoutForm) {
    return this.setLayout.execute(asked, weigherId, form);
  }

  @Post('pack-weighers/:id/files')
  @May('bring-weight-files')
  @Streams()
  @ApiOperation({ summary: 'Bring a file that a weigher wrote: it is read and answered, nothing of it is stored yet' })
  @ApiConsumes('text/csv')
  @ApiBody({ schema: { type: 'string' } })
  @ApiCreatedResponse({ schema: { example: dryRun } })
  async bring(
    @Acting() actor: Actor,
    @Param('id', ParseUUIDPipe) weigherId: string,
    @Streaming() body: StreamedBody,
    @Query() query: WeightFileQuery,
  ) {
    const file = { name: query.name ?? 'weights.csv', bytes: body.pieces() };
    const { id: fileId } = await this.files.bring(actor.siteId, weigherId, file);
    return this.look(actor, fileId);
  }

  @Get('weight-files/:id')
  @May('read')
  @ApiOperation({ summary: 'What storing a file would bring: counts, runs, the first lines, lines in error' })
  @ApiOkResponse({ schema: { example: dryRun } })
  async look(@Acting() actor: Actor, @Param('id', ParseUUIDPipe) fileId: string) {
    const { file, found } = await this.store.dryRun(actor.siteId, fileId);
    const { answer, runs, first: rows } = found;
    return {
      id: file.id,
      name: file.name,
      ...answer,
      problems: answer.problems.map(fieldOf),
      runs: runs.map(({ number, weightCount }) => ({ run: number, weightCount })),
      first: rows.map(({ atCentiseconds, netMilligrams, ...row }) => ({
        ...row,
        at: instantOf(atCentiseconds),
        netGrams: netMilligrams / 1000,
      })),
    };
  }

  @Post('weight-files/:id/storing')
  @May('bring-weight-files')
  @ApiOperation({ summary: 'Store the weights of a file that was brought' })
  @ApiCreatedResponse({ schema: { example: counts } })
  async keep(@Asking() asked: Asked, @Param('id', ParseUUIDPipe) fileId: string, @Body() form: StoreWeightFileForm) {
    const answer = await this.store.execute(asked, fileId, form);
    return { ...answer, problems: answer.problems.map(fieldOf) };
  }
}
