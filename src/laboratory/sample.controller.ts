import { Controller, Get, Inject, Param, ParseUUIDPipe, Query } from '@nestjs/common';
import type { VNode } from 'preact';
import { listed, pageOf } from '../platform/web/listed.js';
import { May } from '../platform/actor.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { PageQuery } from '../platform/web/page-query.js';
import { Looking, type Viewer } from '../platform/web/request.js';
import { samplePage as pageOfSample } from './sample.page.js';
import { bagsOfSample, findSample, resultsOfSamples, samplePage } from './samples.js';
import { samplesPage } from './samples.page.js';

@Controller('samples')
export class SampleController {
  constructor(@Inject(READER) private readonly reader: ReadFrom) {}

  @Get()
  @May('read')
  async list(@Looking() viewer: Viewer, @Query() query: PageQuery): Promise<VNode> {
    const page = pageOf(query);
    const { items, next } = listed(await samplePage(this.reader, viewer.actor.siteId, page), page);
    const results = await resultsOfSamples(
      this.reader,
      items.map(({ id }) => id),
    );
    return samplesPage({ viewer, samples: items, results, next });
  }

  @Get(':id')
  @May('read')
  async one(@Looking() viewer: Viewer, @Param('id', ParseUUIDPipe) id: string): Promise<VNode> {
    const sample = await findSample(this.reader, viewer.actor.siteId, id);
    const results = (await resultsOfSamples(this.reader, [sample.id])).get(sample.id) ?? [];
    return pageOfSample({ viewer, sample, results, bags: await bagsOfSample(this.reader, sample) });
  }
}
