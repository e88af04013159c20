import { Body, Controller, Delete, Get, Inject, Param, ParseUUIDPipe, Post, Query } from '@nestjs/common';
import { ApiCreatedResponse, ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../journal/entry-draft.js';
import { May, type Actor } from '../platform/actor.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { listed, pageOf, type Listed } from '../platform/web/listed.js';
import { Acting, Asking } from '../platform/web/request.js';
import { ClassComplaint } from './class-complaint.js';
import { ClassComplaintForm, ComplaintQuery, LinkComplaintForm } from './complaint.form.js';
import { complaintPage, findComplaint, stepsOf, type ComplaintRow, type StepRow } from './complaints.js';
import { LinkComplaint } from './link-complaint.js';
import { RemoveComplaintContact } from './remove-complaint-contact.js';

const id = '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10';
const example = { id, number: 'C-2026-000001', status: 'open', category: 'colour', severity: 'not-as-sold' };
const done = { schema: { example: { id } } };

@ApiTags('complaints')
@Controller('api')
export class ComplaintApi {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly linkComplaint: LinkComplaint,
    private readonly classComplaint: ClassComplaint,
    private readonly removeContact: RemoveComplaintContact,
  ) {}

  @Get('complaints')
  @May('read')
  @ApiOperation({ summary: 'Complaints, latest recorded first; never who complained' })
  @ApiOkResponse({ schema: { example: { items: [example], next: null } } })
  async list(@Acting() actor: Actor, @Query() query: ComplaintQuery): Promise<Listed<ComplaintRow>> {
    const page = pageOf(query);
    return listed(await complaintPage(this.reader, actor.siteId, { ...page, status: query.status ?? null }), page);
  }

  @Get('complaints/:id')
  @May('read')
  @ApiOperation({ summary: 'One complaint with what was found and done; never who complained' })
  @ApiOkResponse({ schema: { example: { ...example, steps: [] } } })
  async one(
    @Acting() actor: Actor,
    @Param('id', ParseUUIDPipe) complaintId: string,
  ): Promise<ComplaintRow & { readonly steps: readonly StepRow[] }> {
    const complaint = await findComplaint(this.reader, actor.siteId, complaintId);
    return { ...complaint, steps: await stepsOf(this.reader, complaint.id) };
  }

  @Post('complaints/:id/link')
  @May('take-complaints')
  @ApiOperation({ summary: 'What a complaint is about, as the search answered it' })
  @ApiCreatedResponse(done)
  link(
    @Asking() asked: Asked,
    @Param('id', ParseUUIDPipe) complaintId: string,
    @Body() form: LinkComplaintForm,
  ): Promise<{ readonly id: string }> {
    return this.linkComplaint.execute(asked, complaintId, form);
  }

  @Post('complaints/:id/class')
  @May('handle-complaints')
  @ApiOperation({ summary: 'A complaint is of another category or severity' })
  @ApiCreatedResponse(done)
  class(
    @Asking() asked: Asked,
    @Param('id', ParseUUIDPipe) complaintId: string,
    @Body() form: ClassComplaintForm,
  ): Promise<{ readonly id: string }> {
    return this.classComplaint.execute(asked, complaintId, form);
  }

  @Delete('complaints/:id/contact')
  @May('handle-complaints')
  @ApiOperation({ summary: 'Who complained goes; the complaint stays' })
  remove(@Asking() asked: Asked, @Param('id', ParseUUIDPipe) complaintId: string): Promise<{ readonly id: string }> {
    return this.removeContact.execute(asked, complaintId);
  }
}
