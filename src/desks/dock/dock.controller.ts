import { Controller, Get, Param, ParseUUIDPipe, Post, Query } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import type { Asked } from '../../journal/entry-draft.js';
import { May } from '../../platform/actor.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm } from '../../platform/web/sent-form.js';
import { DispatchDesk } from '../dispatch/dispatch-desk.js';
import { LastScanQuery } from '../dispatch/dispatch.form.js';
import { DockActs } from '../dispatch/dock-acts.js';
import { dockListPage, dockPage } from './dock.page.js';

/** The loader on the dock, with a handheld. A delivery cannot be closed from here. */
@ApiExcludeController()
@Controller('dock')
export class DockController {
  constructor(
    private readonly desk: DispatchDesk,
    private readonly acts: DockActs,
  ) {}

  @Get()
  @May('load-vehicles')
  async list(@Looking() viewer: Viewer): Promise<VNode> {
    return dockListPage({ viewer, deliveries: (await this.desk.today(viewer)).deliveries });
  }

  @Get(':deliveryId')
  @May('load-vehicles')
  async one(@Looking() viewer: Viewer, @Param('deliveryId', ParseUUIDPipe) id: string, @Query() query: LastScanQuery) {
    return dockPage({ viewer, loading: await this.desk.loading(viewer, id, query.unit ?? null) });
  }

  @Get(':deliveryId/scans')
  @May('load-vehicles')
  async again(@Looking() viewer: Viewer, @Param('deliveryId', ParseUUIDPipe) id: string): Promise<VNode> {
    return dockPage({ viewer, loading: await this.desk.loading(viewer, id) });
  }

  @Post(':deliveryId/scans')
  @May('load-vehicles')
  scan(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('deliveryId', ParseUUIDPipe) id: string,
  ) {
    return this.acts.scan(sent, { asked, viewer, id, desk: 'dock' }, async (trouble) =>
      dockPage({
        viewer,
        loading: await this.desk.loading(viewer, id),
        trouble,
        putBack: await this.desk.putBack(viewer, trouble),
      }),
    );
  }
}
