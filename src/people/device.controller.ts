import { Body, Controller, Get, Inject, Post, Query, Res } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { FastifyReply } from 'fastify';
import type { VNode } from 'preact';
import type { Asked } from '../journal/entry-draft.js';
import { May } from '../platform/actor.js';
import { CONFIG, type Config } from '../platform/config.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { Ids } from '../platform/ids.js';
import { listed, pageOf } from '../platform/web/listed.js';
import { PageQuery } from '../platform/web/page-query.js';
import { Asking, Looking, type Viewer } from '../platform/web/request.js';
import { giveDeviceCookie } from './cookies.js';
import { EnrolDeviceForm, enrolledKinds } from './device.form.js';
import { devicesPage } from './device.page.js';
import { devicesOf } from './devices.js';
import { EnrolDevice } from './enrol-device.js';
import { goTo } from './go-to.js';
import { enteredText, readForm, troubleOf } from './read-form.js';

@ApiExcludeController()
@Controller('devices')
export class DeviceController {
  constructor(
    private readonly enrolDevice: EnrolDevice,
    private readonly ids: Ids,
    @Inject(READER) private readonly reader: ReadFrom,
    @Inject(CONFIG) private readonly config: Config,
  ) {}

  @Get()
  @May('read')
  list(@Looking() viewer: Viewer, @Query() page: PageQuery): Promise<VNode> {
    return this.page(viewer, page, { body: {}, trouble: [] });
  }

  @Post()
  @May('keep-people')
  async enrol(
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Body() body: Record<string, unknown>,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<VNode | null> {
    try {
      const { token } = await this.enrolDevice.execute(asked, await readForm(EnrolDeviceForm, body));
      if (token !== null) giveDeviceCookie(reply, this.config, token);
      return goTo(reply, '/devices');
    } catch (error) {
      const trouble = troubleOf(error);
      if (trouble === null) throw error;
      void reply.status(trouble.status);
      return this.page(viewer, {}, { body, trouble: trouble.sentences });
    }
  }

  private async page(
    viewer: Viewer,
    page: PageQuery,
    { body, trouble }: { readonly body: unknown; readonly trouble: readonly string[] },
  ): Promise<VNode> {
    const asked = pageOf(page);
    const { items: devices, next: older } = listed(await devicesOf(this.reader, viewer.actor.siteId, asked), asked);
    const entered = { code: enteredText(body, 'code'), kind: enteredText(body, 'kind') };
    return devicesPage({
      viewer,
      devices,
      older,
      trouble,
      entered,
      kinds: enrolledKinds,
      formKey: this.ids.next(),
    });
  }
}
