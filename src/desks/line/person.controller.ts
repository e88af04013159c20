import { Controller, Get, Param, ParseUUIDPipe } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import { peopleWithPin } from '../../people/people.js';
import { May } from '../../platform/actor.js';
import { Looking, type Viewer } from '../../platform/web/request.js';
import { LineDesk } from './line-desk.js';
import { personPage } from './person.page.js';

/** Somebody else takes the tablet: by badge, or by name and PIN. */
@ApiExcludeController()
@Controller('line/:lineId/person')
export class LinePersonController {
  constructor(private readonly desk: LineDesk) {}

  @Get()
  @May('read')
  async choose(@Looking() viewer: Viewer, @Param('lineId', ParseUUIDPipe) lineId: string): Promise<VNode> {
    const at = await this.desk.line(viewer, lineId);
    const people = viewer.deviceCode === null ? [] : await peopleWithPin(this.desk.reader, viewer.actor.siteId);
    return personPage({ viewer, at, people });
  }
}
