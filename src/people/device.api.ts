import { Body, Controller, Delete, Get, Inject, Param, ParseUUIDPipe, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../journal/entry-draft.js';
import { May, type Actor } from '../platform/actor.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { listed, pageOf, type Listed } from '../platform/web/listed.js';
import { PageQuery } from '../platform/web/page-query.js';
import { Acting, Asking } from '../platform/web/request.js';
import { AddMachine } from './add-machine.js';
import { AddMachineForm, EnrolDeviceForm } from './device.form.js';
import type { DeviceWithToken } from './device-in-unit.js';
import { devicesOf, type DeviceRow } from './devices.js';
import { EnrolDevice } from './enrol-device.js';
import { RenewDeviceToken } from './renew-device-token.js';
import { WithdrawDevice } from './withdraw-device.js';

const id = '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a77';
const withToken = { schema: { example: { id, code: 'pack-weigher-1', token: 'q0m3…43 characters, shown once' } } };
const row = { id, code: 'pack-weigher-1', kind: 'machine', tokenSetAt: '2026-03-12T06:00:00.000Z' };

@ApiTags('devices')
@Controller('api/devices')
export class DeviceApi {
  constructor(
    private readonly enrolDevice: EnrolDevice,
    private readonly addMachine: AddMachine,
    private readonly renewToken: RenewDeviceToken,
    private readonly withdrawDevice: WithdrawDevice,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  @Get()
  @May('read')
  @ApiOperation({ summary: 'The devices of the site, newest first' })
  @ApiOkResponse({ schema: { example: { items: [row], next: null } } })
  async list(@Acting() actor: Actor, @Query() page: PageQuery): Promise<Listed<DeviceRow>> {
    const asked = pageOf(page);
    return listed(await devicesOf(this.reader, actor.siteId, asked), asked);
  }

  @Post()
  @May('keep-people')
  @ApiOperation({ summary: 'Enrol a tablet, handheld or desk; its token, answered once, goes into packthread-device' })
  @ApiCreatedResponse(withToken)
  enrol(@Asking() asked: Asked, @Body() form: EnrolDeviceForm): Promise<DeviceWithToken> {
    return this.enrolDevice.execute(asked, form);
  }

  @Post('machines')
  @May('keep-people')
  @ApiOperation({ summary: 'Add a machine; its token, answered once, goes into Authorization: Bearer' })
  @ApiCreatedResponse(withToken)
  add(@Asking() asked: Asked, @Body() form: AddMachineForm): Promise<DeviceWithToken> {
    return this.addMachine.execute(asked, form);
  }

  @Post(':id/token')
  @May('keep-people')
  @ApiOperation({ summary: 'Give a device a new token; the one before is worth nothing now' })
  @ApiCreatedResponse(withToken)
  renew(@Asking() asked: Asked, @Param('id', ParseUUIDPipe) deviceId: string): Promise<DeviceWithToken> {
    return this.renewToken.execute(asked, deviceId);
  }

  @Delete(':id/token')
  @May('keep-people')
  @ApiOperation({ summary: 'Withdraw a device that is lost or gone' })
  withdraw(@Asking() asked: Asked, @Param('id', ParseUUIDPipe) deviceId: string): Promise<{ id: string }> {
    return this.withdrawDevice.execute(asked, deviceId);
  }
}
