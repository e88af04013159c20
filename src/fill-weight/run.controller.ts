import { Controller, Get, Inject, Param, ParseUUIDPipe, Query } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import { May } from '../platform/actor.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { listed, pageOf } from '../platform/web/listed.js';
import { PageQuery } from '../platform/web/page-query.js';
import { Looking, type Viewer } from '../platform/web/request.js';
import { findRun } from '../packing/packing-runs.js';
import { runPage } from '../packing/run-lists.js';
import { readRunView } from '../packing/run-view.js';
import { runListPage } from '../packing/packing-run-list.page.js';
import { packingRunPage } from '../packing/packing-run.page.js';
import { meanNetOf } from './mean-nets.js';
import { RunSights } from './run-weights/run-sights.js';
import { runWeightsPage } from './run-weights/run-weights.page.js';
import { RunWeightsQuery } from './run-weights/run-weights.query.js';

/** The pages of a run stand here, because they show its mean net. */
@ApiExcludeController()
@Controller('runs')
export class RunController {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly sights: RunSights,
  ) {}

  @Get()
  @May('read')
  async list(@Looking() viewer: Viewer, @Query() query: PageQuery): Promise<VNode> {
    const page = pageOf(query);
    const { items, next } = listed(await runPage(this.reader, viewer.actor.siteId, page), page);
    return runListPage({ viewer, runs: items, older: next });
  }

  @Get(':id')
  @May('read')
  async one(@Looking() viewer: Viewer, @Param('id', ParseUUIDPipe) id: string): Promise<VNode> {
    const run = await findRun(this.reader, viewer.actor.siteId, id);
    return packingRunPage({
      viewer,
      view: await readRunView(this.reader, run),
      meanNet: await meanNetOf(this.reader, run.id),
    });
  }

  @Get(':id/weights')
  @May('read')
  async weights(
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
    @Query() query: RunWeightsQuery,
  ): Promise<VNode> {
    const run = await findRun(this.reader, viewer.actor.siteId, id);
    return runWeightsPage({ viewer, sight: await this.sights.of(run), chosen: query.market ?? null });
  }
}
