import { Controller, Get, Inject } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import { May } from '../../platform/actor.js';
import { Clock } from '../../platform/clock.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { Looking, type Viewer } from '../../platform/web/request.js';
import { todayPage } from './today.page.js';
import { todayView } from './today-view.js';

/** The plant today, for the plant manager, the auditor, and everybody else. */
@ApiExcludeController()
@Controller('today')
export class TodayController {
  constructor(
    private readonly clock: Clock,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  @Get()
  @May('read')
  async show(@Looking() viewer: Viewer): Promise<VNode> {
    return todayPage({ viewer, today: await todayView(this.reader, viewer.actor.siteId, this.clock.now()) });
  }
}
