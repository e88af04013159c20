import { Controller, Get, Param, ParseUUIDPipe, Post, Query } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import { May } from '../../platform/actor.js';
import type { Asked } from '../../journal/entry-draft.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm } from '../../platform/web/sent-form.js';
import { DispatchDesk } from './dispatch-desk.js';
import { LastScanQuery } from './dispatch.form.js';
import { DockActs } from './dock-acts.js';
import { loadingPage } from './loading.page.js';

/** One delivery at the clerk's desk: what is on it, and the scans. */
@ApiExcludeController()
@Controller('dispatch/:deliveryId')
export class DispatchLoadingController {
  constructor(
    private readonly desk: DispatchDesk,
    private readonly acts: DockActs,
  ) {}

  @Get()
  @May('read')
  async one(@Looking() viewer: Viewer, @Param('deliveryId', ParseUUIDPipe) id: string, @Query() query: LastScanQuery) {
    return loadingPage({ viewer, loading: await this.desk.loading(viewer, id, query.unit ?? null) });
  }

  /** Where a refused scan is shown: a page that follows the journal reads it again from here. */
  @Get('scans')
  @May('read')
  async again(@Looking() viewer: Viewer, @Param('deliveryId', ParseUUIDPipe) id: string): Promise<VNode> {
    return loadingPage({ viewer, loading: await this.desk.loading(viewer, id) });
  }

  @Post('scans')
  @May('load-vehicles')
  scan(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('deliveryId', ParseUUIDPipe) id: string,
  ) {
    return this.acts.scan(sent, { asked, viewer, id, desk: 'dispatch' }, async (trouble) =>
      loadingPage({
        viewer,
        loading: await this.desk.loading(viewer, id),
        trouble,
        putBack: await this.desk.putBack(viewer, trouble),
      }),
    );
  }
}
