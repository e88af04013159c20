import { Controller, Get, Inject, Param, Post, Req, Res } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { FastifyReply } from 'fastify';
import type { VNode } from 'preact';
import { cookieOf, deviceCookie, giveDeviceCookie, takeDeviceCookie } from '../../people/cookies.js';
import { goTo } from '../../people/go-to.js';
import { SignsIn } from '../../people/signed-in.guard.js';
import { findDeviceByToken } from '../../people/who-asks.js';
import { AnyoneMay } from '../../platform/actor.js';
import { sha256 } from '../../platform/canonical-text.js';
import { CONFIG, type Config } from '../../platform/config.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { NotFound } from '../../platform/refusal.js';
import type { HouseRequest } from '../../platform/web/request.js';
import { demoPeople } from '../set-up/demo-people.js';
import type { DemoDevice } from '../set-up/demo-device.js';
import { entrancePage } from './entrance.page.js';

export const DEMO_DEVICES = Symbol('demo-devices');

/**
 * Whoever looks at the demo makes the browser a tablet of it. A press does it, not the address: a link from elsewhere
 * changes nothing, and a form from elsewhere is refused as one that signs in.
 */
@ApiExcludeController()
@Controller('demo')
export class EntranceController {
  constructor(
    @Inject(DEMO_DEVICES) private readonly devices: readonly DemoDevice[],
    @Inject(READER) private readonly reader: ReadFrom,
    @Inject(CONFIG) private readonly config: Config,
  ) {}

  @Get()
  @AnyoneMay()
  async show(@Req() request: HouseRequest): Promise<VNode> {
    const token = cookieOf(request, deviceCookie);
    const here = token === null ? null : await findDeviceByToken(this.reader, sha256(token));
    const known = await Promise.all(this.devices.map(async (device) => ((await this.isKnown(device)) ? [device] : [])));
    return entrancePage({ devices: known.flat(), people: demoPeople, hereCode: here?.code ?? null });
  }

  @Post('devices/:code')
  @AnyoneMay()
  @SignsIn()
  async become(@Param('code') code: string, @Res({ passthrough: true }) reply: FastifyReply): Promise<null> {
    const device = this.devices.find((one) => one.code === code);
    if (device === undefined || !(await this.isKnown(device))) throw new NotFound('device', code);
    giveDeviceCookie(reply, this.config, device.token);
    return goTo(reply, '/sign-in');
  }

  @Post('no-device')
  @AnyoneMay()
  @SignsIn()
  leave(@Res({ passthrough: true }) reply: FastifyReply): null {
    takeDeviceCookie(reply, this.config);
    return goTo(reply, '/sign-in');
  }

  /** A token that was drawn for another database, or renewed since, is worth nothing: such a device is not offered. */
  private async isKnown({ token }: DemoDevice): Promise<boolean> {
    return (await findDeviceByToken(this.reader, sha256(token))) !== null;
  }
}
