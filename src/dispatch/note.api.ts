import { Body, Controller, Get, Inject, Param, ParseUUIDPipe, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../journal/entry-draft.js';
import { May, type Actor } from '../platform/actor.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { listed, pageOf, type Listed } from '../platform/web/listed.js';
import { PageQuery } from '../platform/web/page-query.js';
import { Acting, Asking } from '../platform/web/request.js';
import { CloseDelivery, type CloseAnswer } from './close-delivery.js';
import { VehicleLeavesForm, VoidNoteForm } from './delivery.form.js';
import { CloseDeliveryForm } from './loading.form.js';
import { paperPage, type ListedPaper } from './paper-list.js';
import { VehicleLeaves, type LeaveAnswer } from './vehicle-leaves.js';
import { VoidDeliveryNote, type VoidAnswer } from './void-delivery-note.js';

@ApiTags('deliveries')
@Controller('api')
export class NoteApi {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly closeDelivery: CloseDelivery,
    private readonly voidDeliveryNote: VoidDeliveryNote,
    private readonly vehicleLeaves: VehicleLeaves,
  ) {}

  @Post('deliveries/:id/close')
  @May('close-deliveries')
  @ApiOperation({ summary: 'Close a delivery and issue its numbered note' })
  @ApiCreatedResponse({ schema: { example: { noteNumber: 'DN-2026-000471', paperId: '…' } } })
  close(
    @Asking() asked: Asked,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() form: CloseDeliveryForm,
  ): Promise<CloseAnswer> {
    return this.closeDelivery.execute(asked, id, form);
  }

  @Post('deliveries/:id/void-notes')
  @May('close-deliveries')
  @ApiOperation({ summary: 'Make the delivery note void; its number stays with the reason' })
  voidNote(
    @Asking() asked: Asked,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() form: VoidNoteForm,
  ): Promise<VoidAnswer> {
    return this.voidDeliveryNote.execute(asked, id, form);
  }

  @Post('deliveries/:id/departure')
  @May('close-deliveries')
  @ApiOperation({ summary: 'State that the vehicle left; every unit is looked at for the last time' })
  leave(
    @Asking() asked: Asked,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() form: VehicleLeavesForm,
  ): Promise<LeaveAnswer> {
    return this.vehicleLeaves.execute(asked, id, form);
  }

  @Get('papers')
  @May('read')
  @ApiOperation({ summary: 'All papers that were given out, newest first, void ones with the reason' })
  async papers(@Acting() actor: Actor, @Query() query: PageQuery): Promise<Listed<ListedPaper>> {
    const page = pageOf(query);
    return listed(await paperPage(this.reader, actor.siteId, page), page);
  }
}
