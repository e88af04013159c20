import { Body, Controller, Get, Inject, Param, ParseUUIDPipe, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../journal/entry-draft.js';
import { May, type Actor } from '../platform/actor.js';
import { Clock } from '../platform/clock.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { listed, pageOf, type Listed } from '../platform/web/listed.js';
import { PageQuery } from '../platform/web/page-query.js';
import { Acting, Asking } from '../platform/web/request.js';
import { CancelDelivery } from './cancel-delivery.js';
import { deliveryPage } from './deliveries.js';
import type { DeliveryRow } from './delivery-rows.js';
import { deliveryView, type DeliveryView } from './delivery-views.js';
import { ChangeDelivery } from './change-delivery.js';
import { CancelDeliveryForm, ChangeDeliveryForm, PlanDeliveryForm } from './delivery.form.js';
import { PlanDelivery, type PlanAnswer } from './plan-delivery.js';

@ApiTags('deliveries')
@Controller('api/deliveries')
export class DeliveryApi {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly clock: Clock,
    private readonly planDelivery: PlanDelivery,
    private readonly cancelDelivery: CancelDelivery,
    private readonly changeDelivery: ChangeDelivery,
  ) {}

  @Post()
  @May('keep-deliveries')
  @ApiOperation({ summary: 'Plan a delivery: a customer’s order lines that are to go on one vehicle' })
  @ApiCreatedResponse({ schema: { example: { id: '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10' } } })
  plan(@Asking() asked: Asked, @Body() form: PlanDeliveryForm): Promise<PlanAnswer> {
    return this.planDelivery.execute(asked, form);
  }

  @Get()
  @May('read')
  @ApiOperation({ summary: 'Deliveries, newest first' })
  async list(@Acting() actor: Actor, @Query() query: PageQuery): Promise<Listed<DeliveryRow>> {
    const page = pageOf(query);
    return listed(await deliveryPage(this.reader, actor.siteId, page), page);
  }

  @Get(':id')
  @May('read')
  @ApiOperation({ summary: 'One delivery: needed, on, left; the vehicle; the papers, void ones too' })
  @ApiOkResponse({
    schema: { example: { orderNumber: '4500123', status: 'loading', lines: [], units: [], notes: [] } },
  })
  one(@Acting() actor: Actor, @Param('id', ParseUUIDPipe) id: string): Promise<DeliveryView> {
    return deliveryView(this.reader, actor.siteId, id, this.clock.now());
  }

  @Post(':id/changes')
  @May('keep-deliveries')
  @ApiOperation({ summary: 'Change when a delivery is to leave, its order number and its lines' })
  change(
    @Asking() asked: Asked,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() form: ChangeDeliveryForm,
  ): Promise<{ readonly id: string }> {
    return this.changeDelivery.execute(asked, id, form);
  }

  @Post(':id/cancellation')
  @May('keep-deliveries')
  @ApiOperation({ summary: 'Cancel a delivery that has nothing on its vehicle' })
  cancel(
    @Asking() asked: Asked,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() form: CancelDeliveryForm,
  ): Promise<{ readonly id: string }> {
    return this.cancelDelivery.execute(asked, id, form);
  }
}
