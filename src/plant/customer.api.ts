import { Body, Controller, Delete, Get, Inject, Param, ParseUUIDPipe, Post, Put, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../journal/entry-draft.js';
import { May, type Actor } from '../platform/actor.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { listed, pageOf } from '../platform/web/listed.js';
import { PageQuery } from '../platform/web/page-query.js';
import { Acting, Asking } from '../platform/web/request.js';
import { AddCustomer } from './add-customer.js';
import { AddStorePlace } from './add-store-place.js';
import { AddCustomerForm, AddStorePlaceForm, SetCustomerContactForm } from './customer.form.js';
import { customersOf } from './customers.js';
import type { CustomerRow } from './plant-rows.js';
import { RemoveCustomerContact } from './remove-customer-contact.js';
import { SetCustomerContact } from './set-customer-contact.js';

const added = { schema: { example: { id: '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10' } } };

@ApiTags('plant')
@Controller('api/plant')
export class CustomerApi {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly addCustomer: AddCustomer,
    private readonly setContact: SetCustomerContact,
    private readonly removeContact: RemoveCustomerContact,
    private readonly addStorePlace: AddStorePlace,
  ) {}

  @Get('customers')
  @May('read')
  @ApiOperation({ summary: 'Customers, the latest first' })
  async list(
    @Acting() actor: Actor,
    @Query() page: PageQuery,
  ): Promise<{ readonly items: readonly CustomerRow[]; readonly next: string | null }> {
    const asked = pageOf(page);
    return listed(await customersOf(this.reader, actor.siteId, asked), asked);
  }

  @Post('customers')
  @May('keep-deliveries')
  @ApiOperation({ summary: 'Set up a customer' })
  @ApiCreatedResponse(added)
  add(@Asking() asked: Asked, @Body() form: AddCustomerForm): Promise<{ readonly id: string }> {
    return this.addCustomer.execute(asked, form);
  }

  @Put('customer-contacts')
  @May('keep-deliveries')
  @ApiOperation({ summary: 'A customer’s name and address are others now' })
  contact(@Asking() asked: Asked, @Body() form: SetCustomerContactForm): Promise<{ readonly id: string }> {
    return this.setContact.execute(asked, form);
  }

  @Delete('customer-contacts/:id')
  @May('keep-people')
  @ApiOperation({ summary: 'Name and address of a customer go when their time is up' })
  remove(@Asking() asked: Asked, @Param('id', ParseUUIDPipe) id: string): Promise<{ readonly id: string }> {
    return this.removeContact.execute(asked, id);
  }

  @Post('places')
  @May('set-up-plant')
  @ApiOperation({ summary: 'Set up a place in the store' })
  @ApiCreatedResponse(added)
  place(@Asking() asked: Asked, @Body() form: AddStorePlaceForm): Promise<{ readonly id: string }> {
    return this.addStorePlace.execute(asked, form);
  }
}
