import { Controller, Get, Inject, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import type { Asked } from '../../journal/entry-draft.js';
import { linesOfSite } from '../../plant/named-things.js';
import { May } from '../../platform/actor.js';
import { Clock } from '../../platform/clock.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm, type TakenForScript } from '../../platform/web/sent-form.js';
import { MqttLine } from '../mqtt/mqtt-line.js';
import { WeigherWayForm, WithdrawPackWeigherForm } from '../pack-weigher.form.js';
import { packWeigherOf, packWeighersOf } from '../pack-weighers.js';
import { installFormOf, NothingForm, WeigherStepForm } from './pack-weigher-set-up.form.js';
import { packWeigherPage, weigherTokenPage } from './pack-weigher.page.js';
import { packWeighersPage } from './pack-weighers.page.js';
import { WeigherActs } from './weigher-acts.js';

type Taken = Promise<VNode | TakenForScript | null>;

/** Pack weighers: set up with their machine, let send by MQTT, given a new token, taken off their line. */
@ApiExcludeController()
@Controller('set-up/pack-weighers')
export class PackWeighersController {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly clock: Clock,
    private readonly mqtt: MqttLine,
    private readonly acts: WeigherActs,
  ) {}

  @Get()
  @May('read')
  list(@Looking() viewer: Viewer): Promise<VNode> {
    return this.all(viewer, null);
  }

  @Post()
  @May('keep-people')
  add(@Sent() sent: SentForm, @Asking() asked: Asked, @Looking() viewer: Viewer): Promise<VNode> {
    return sent.show({
      form: WeigherStepForm,
      timeZone: viewer.timeZone,
      act: (form) => this.acts.install.execute(asked, installFormOf(form)),
      page: ({ id, token }) => this.tokenPage(viewer, id, token),
      again: (why) => this.all(viewer, why),
    });
  }

  @Get(':id')
  @May('read')
  see(@Looking() viewer: Viewer, @Param('id', ParseUUIDPipe) id: string): Promise<VNode> {
    return this.one(viewer, id, null);
  }

  @Post(':id/way')
  @May('set-up-plant')
  way(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
  ): Taken {
    return sent.take({
      form: WeigherWayForm,
      timeZone: viewer.timeZone,
      act: (form) => this.acts.setWay.execute(asked, id, form),
      next: () => `/set-up/pack-weighers/${id}`,
      says: () => ({ code: 'weigher-saved', facts: {} }),
      again: (why) => this.one(viewer, id, { of: 'way', why }),
    });
  }

  @Post(':id/token')
  @May('keep-people')
  async token(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
  ): Promise<VNode> {
    const { deviceId } = await packWeigherOf(this.reader, viewer.actor.siteId, id);
    return sent.show({
      form: NothingForm,
      timeZone: viewer.timeZone,
      act: () => this.acts.renewToken.execute(asked, deviceId),
      page: ({ token }) => this.tokenPage(viewer, id, token),
      again: (why) => this.one(viewer, id, { of: 'token', why }),
    });
  }

  @Post(':id/withdrawal')
  @May('set-up-plant')
  end(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
  ): Taken {
    return sent.take({
      form: WithdrawPackWeigherForm,
      timeZone: viewer.timeZone,
      act: (form) => this.acts.withdraw.execute(asked, id, form),
      next: () => '/set-up/pack-weighers',
      says: () => ({ code: 'weigher-withdrawn', facts: {} }),
      again: (why) => this.one(viewer, id, { of: 'withdrawal', why }),
    });
  }

  private async all(viewer: Viewer, trouble: FormTrouble | null): Promise<VNode> {
    const { siteId } = viewer.actor;
    const weighers = await packWeighersOf(this.reader, siteId);
    const lines = await linesOfSite(this.reader, siteId);
    return packWeighersPage({ viewer, weighers, lines, mqtt: this.mqtt.standing, trouble });
  }

  private async one(
    viewer: Viewer,
    id: string,
    trouble: { readonly of: string; readonly why: FormTrouble } | null,
  ): Promise<VNode> {
    const weigher = await packWeigherOf(this.reader, viewer.actor.siteId, id);
    return packWeigherPage({ viewer, weigher, mqtt: this.mqtt.standing, trouble });
  }

  private async tokenPage(viewer: Viewer, id: string, token: string | null): Promise<VNode> {
    const weigher = await packWeigherOf(this.reader, viewer.actor.siteId, id);
    return weigherTokenPage({ viewer, weigher, token, asAt: this.clock.now() });
  }
}
