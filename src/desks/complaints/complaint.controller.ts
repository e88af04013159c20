import { Controller, Get, Inject, Param, ParseUUIDPipe, Post, Query } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import { ComplaintStepForm, ComplaintQuery } from '../../complaints/complaint.form.js';
import { complaintPage, complaintsToDecide } from '../../complaints/complaints.js';
import { LinkComplaint } from '../../complaints/link-complaint.js';
import { TakeComplaintStep } from '../../complaints/take-complaint-step.js';
import type { Asked } from '../../journal/entry-draft.js';
import { May } from '../../platform/actor.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { pageOf } from '../../platform/web/listed.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm, type TakenForScript } from '../../platform/web/sent-form.js';
import { LinkByCodeForm } from './complaint-page.form.js';
import { ComplaintPages } from './complaint-pages.js';
import { complaintListPage } from './complaint-list.page.js';
import { ReadByCustomer } from './read-by-customer.js';

type Answer = Promise<VNode | TakenForScript | null>;

@ApiExcludeController()
@Controller('quality/complaints')
export class ComplaintController {
  constructor(
    private readonly pages: ComplaintPages,
    private readonly takeStep: TakeComplaintStep,
    private readonly linkComplaint: LinkComplaint,
    private readonly readByCustomer: ReadByCustomer,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  @Get()
  @May('read')
  async list(@Looking() viewer: Viewer, @Query() query: ComplaintQuery): Promise<VNode> {
    const { siteId } = viewer.actor;
    const page = pageOf(query);
    const toDecide = await complaintsToDecide(this.reader, siteId);
    const all = await complaintPage(this.reader, siteId, { ...page, status: query.status ?? null });
    const older = all.length < page.limit ? null : (all.at(-1)?.id ?? null);
    return complaintListPage({ viewer, toDecide, all, older });
  }

  @Get(':id')
  @May('read')
  one(@Looking() viewer: Viewer, @Param('id', ParseUUIDPipe) id: string): Promise<VNode> {
    return this.pages.page(viewer, id, null);
  }

  @Get(':id/letter')
  @May('handle-complaints')
  letter(@Looking() viewer: Viewer, @Param('id', ParseUUIDPipe) id: string): Promise<VNode> {
    return this.pages.letter(viewer, id);
  }

  @Post(':id/steps')
  @May('handle-complaints')
  step(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
  ): Answer {
    return sent.take({
      form: ComplaintStepForm,
      timeZone: viewer.timeZone,
      act: (form) => this.takeStep.execute(asked, id, form),
      next: () => `/quality/complaints/${id}`,
      says: ({ number, status }) => ({ code: `said-complaint-${status}`, facts: { complaint: number } }),
      again: (trouble) => this.pages.again(viewer, id, 'step', trouble),
    });
  }

  @Post(':id/link')
  @May('take-complaints')
  link(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
  ): Answer {
    return sent.take({
      form: LinkByCodeForm,
      timeZone: viewer.timeZone,
      act: async ({ code, meant = null }) => {
        const link = await this.readByCustomer.linkOf(asked.actor.siteId, code, meant);
        return this.linkComplaint.execute(asked, id, link);
      },
      next: () => `/quality/complaints/${id}`,
      says: () => ({ code: 'said-complaint-linked', facts: {} }),
      again: (trouble) => this.pages.again(viewer, id, 'link', trouble),
    });
  }
}
