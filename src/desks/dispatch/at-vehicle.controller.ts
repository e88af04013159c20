import { Controller, Get, Param, ParseUUIDPipe, Post, Query } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import type { Asked } from '../../journal/entry-draft.js';
import { May } from '../../platform/actor.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm } from '../../platform/web/sent-form.js';
import { LastScanQuery } from './dispatch.form.js';
import { DockActs, type AtDock } from './dock-acts.js';

/** What is done at the vehicle from either desk: check it, count what stands on it, take a unit off. */
@ApiExcludeController()
@Controller(['dispatch/:deliveryId', 'dock/:deliveryId'])
@May('load-vehicles')
export class AtVehicleController {
  constructor(private readonly acts: DockActs) {}

  @Get('check')
  check(@Looking() viewer: Viewer, @Param('deliveryId', ParseUUIDPipe) id: string): Promise<VNode> {
    return this.acts.checkPage(atDesk(viewer, id));
  }

  @Post('check')
  checkIt(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('deliveryId', ParseUUIDPipe) id: string,
  ) {
    return this.acts.check(sent, { ...atDesk(viewer, id), asked });
  }

  @Get('count')
  count(@Looking() viewer: Viewer, @Param('deliveryId', ParseUUIDPipe) id: string): Promise<VNode> {
    return this.acts.countPage(atDesk(viewer, id));
  }

  @Post('count')
  countIt(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('deliveryId', ParseUUIDPipe) id: string,
  ) {
    return this.acts.count(sent, { ...atDesk(viewer, id), asked });
  }

  @Get('unload')
  unload(
    @Looking() viewer: Viewer,
    @Param('deliveryId', ParseUUIDPipe) id: string,
    @Query() query: LastScanQuery,
  ): Promise<VNode> {
    return this.acts.unloadPage(atDesk(viewer, id), query.unit ?? '');
  }

  @Post('unload')
  unloadIt(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('deliveryId', ParseUUIDPipe) id: string,
  ) {
    return this.acts.unload(sent, { ...atDesk(viewer, id), asked });
  }
}

/** The desk is the one whose address was asked. */
function atDesk(viewer: Viewer, id: string): AtDock {
  return { viewer, id, desk: viewer.path.startsWith('/dock/') ? 'dock' : 'dispatch' };
}
