import { Controller, Get, Query, Res } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { FastifyReply } from 'fastify';
import type { VNode } from 'preact';
import { May } from '../../platform/actor.js';
import { Clock } from '../../platform/clock.js';
import { HeavyReads } from '../../platform/database/heavy-reads.js';
import { Refusal } from '../../platform/refusal.js';
import { formTroubleOf } from '../../platform/web/form-trouble.js';
import { Looking, type Viewer } from '../../platform/web/request.js';
import { daysOf, readPlantReach } from '../../tracing/plant-reach.js';
import { PlantReachQuery } from '../../tracing/reach.form.js';
import { plantReachPage } from './reach.page.js';

/** How large a recall of one bag would be, over some days of the plant. */
@ApiExcludeController()
@Controller('quality/reach')
export class PlantReachController {
  constructor(
    private readonly heavy: HeavyReads,
    private readonly clock: Clock,
  ) {}

  @Get()
  @May('read-reach')
  show(
    @Looking() viewer: Viewer,
    @Query() query: PlantReachQuery,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<VNode> {
    const { siteId } = viewer.actor;
    return this.heavy.snapshot(async (from) => {
      const days = await daysOf(from, siteId, query, this.clock.now());
      try {
        return plantReachPage({ viewer, days, reach: await readPlantReach(from, siteId, days), refusal: null });
      } catch (error) {
        const trouble = error instanceof Refusal ? formTroubleOf(error, {}, viewer.timeZone) : null;
        if (trouble === null) throw error;
        void reply.status(trouble.status);
        return plantReachPage({ viewer, days, reach: null, refusal: trouble.sentence });
      }
    });
  }
}
