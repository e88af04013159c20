import { Controller, Get, Inject } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import { May } from '../platform/actor.js';
import { Clock } from '../platform/clock.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { Looking, type Viewer } from '../platform/web/request.js';
import { plantPage } from './plant.page.js';
import { allOf } from './whole-plant.js';

@ApiExcludeController()
@Controller('plant')
export class PlantController {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly clock: Clock,
  ) {}

  @Get()
  @May('read')
  async plant(@Looking() viewer: Viewer): Promise<VNode> {
    return plantPage({ viewer, plant: await allOf(this.reader, viewer.actor.siteId, this.clock.now()) });
  }
}
