import { Body, Controller, Get, Inject, Param, ParseUUIDPipe, Post, Query, Res } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { FastifyReply } from 'fastify';
import type { Asked } from '../journal/entry-draft.js';
import { May, type Actor } from '../platform/actor.js';
import { HeavyReads } from '../platform/database/heavy-reads.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { listed, pageOf, type Listed } from '../platform/web/listed.js';
import { NotFound } from '../platform/refusal.js';
import { PageQuery } from '../platform/web/page-query.js';
import { Acting, Asking } from '../platform/web/request.js';
import { sendHeld } from '../platform/web/send-held.js';
import { figuresOfText, type FiguresOfText } from './frozen-figures.js';
import { linksCsv } from './links-csv.js';
import { MarkRecall, type RecallMarked } from './mark-recall.js';
import { OpenRecall, type RecallOpened } from './open-recall.js';
import { proposedHolds, type ProposedHold } from './recall-holds.js';
import { MarkRecallForm, OpenRecallForm } from './recall.form.js';
import { question } from './recall.question.js';
import { findRecall, recallPage, reportOfRecall, signingOf, type RecallRow, type RecallSigningRow } from './recalls.js';

const id = '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10';
const example = { id, number: 'EX-2026-000001', kind: 'exercise', startedAt: '2026-03-12T14:00:00.000Z' };

/** As it was signed, to be read by machines. */
interface SignedRecall extends Omit<RecallSigningRow, 'figures'> {
  readonly figures: FiguresOfText;
  readonly paperId: string | null;
}

@ApiTags('recalls')
@Controller('api')
export class RecallApi {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly heavy: HeavyReads,
    private readonly openRecall: OpenRecall,
    private readonly markRecall: MarkRecall,
  ) {}

  @Get('recalls')
  @May('read')
  @ApiOperation({ summary: 'Recalls and exercises, latest opened first' })
  @ApiOkResponse({ schema: { example: { items: [example], next: null } } })
  async list(@Acting() actor: Actor, @Query() query: PageQuery): Promise<Listed<RecallRow>> {
    const page = pageOf(query);
    return listed(await recallPage(this.reader, actor.siteId, page), page);
  }

  @Get('recalls/:id')
  @May('read')
  @ApiOperation({ summary: 'One recall with its sums, customers and units, as they stand now' })
  async one(
    @Acting() { siteId }: Actor,
    @Param('id', ParseUUIDPipe) recallId: string,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<Buffer> {
    return sendHeld(reply, await this.heavy.reportHeld(question, { siteId, recallId }));
  }

  @Get('recalls/:id/signing')
  @May('read')
  @ApiOperation({ summary: 'The figures of a recall as they were signed, and its report' })
  signing(@Acting() actor: Actor, @Param('id', ParseUUIDPipe) recallId: string): Promise<SignedRecall> {
    return this.heavy.snapshot(async (from) => {
      const { id: known } = await findRecall(from, actor.siteId, recallId);
      const signing = await signingOf(from, known);
      if (signing === null) throw new NotFound('recall-signing', recallId);
      const { figures, ...signed } = signing;
      return { ...signed, figures: figuresOfText(figures), paperId: await reportOfRecall(from, known) };
    });
  }

  @Get('recalls/:id/links.csv')
  @May('read')
  @ApiOperation({
    summary: 'One line a link from bag to customer; as signed, or as it stands while the recall is open',
  })
  async links(
    @Acting() actor: Actor,
    @Param('id', ParseUUIDPipe) recallId: string,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const { number, csv } = await this.heavy.snapshot(async (from) => {
      const recall = await findRecall(from, actor.siteId, recallId);
      return { number: recall.number, csv: await linksCsv(from, recall) };
    });
    await reply
      .type('text/csv; charset=utf-8')
      .header('Content-Disposition', `attachment; filename="${number}-links.csv"`)
      .send(csv);
  }

  @Get('recalls/:id/proposed-holds')
  @May('read')
  @ApiOperation({ summary: 'The holds that would block what a recall covers, before they are placed' })
  proposed(
    @Acting() actor: Actor,
    @Param('id', ParseUUIDPipe) recallId: string,
  ): Promise<{ readonly holds: readonly ProposedHold[] }> {
    return this.heavy.snapshot(async (from) => ({
      holds: await proposedHolds(from, await findRecall(from, actor.siteId, recallId)),
    }));
  }

  @Post('recalls')
  @May('run-recalls')
  @ApiOperation({ summary: 'Open a recall or an exercise; its clock begins to run' })
  @ApiCreatedResponse({ schema: { example } })
  open(@Asking() asked: Asked, @Body() form: OpenRecallForm): Promise<RecallOpened> {
    return this.openRecall.execute(asked, form);
  }

  @Post('recalls/:id/marks')
  @May('run-recalls')
  @ApiOperation({ summary: 'The first list of customers is out, the stock is blocked, or the clock is stopped' })
  @ApiCreatedResponse({ schema: { example: { recallId: id, number: example.number, mark: 'clock-stopped' } } })
  mark(
    @Asking() asked: Asked,
    @Param('id', ParseUUIDPipe) recallId: string,
    @Body() form: MarkRecallForm,
  ): Promise<RecallMarked> {
    return this.markRecall.execute(asked, recallId, form);
  }
}
