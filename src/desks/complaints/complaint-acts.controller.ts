import { Controller, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import { ClassComplaint } from '../../complaints/class-complaint.js';
import { ClassComplaintForm, WithdrawForm } from '../../complaints/complaint.form.js';
import { RemoveComplaintContact } from '../../complaints/remove-complaint-contact.js';
import { WithdrawComplaint } from '../../complaints/withdraw-complaint.js';
import { WithdrawComplaintStep } from '../../complaints/withdraw-complaint-step.js';
import type { Asked } from '../../journal/entry-draft.js';
import { May } from '../../platform/actor.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm, type TakenForScript } from '../../platform/web/sent-form.js';
import { RemoveContactForm } from './complaint-page.form.js';
import { ComplaintPages } from './complaint-pages.js';

type Answer = Promise<VNode | TakenForScript | null>;

/** What is done to a complaint rarely: its class, withdrawals, the name that goes. */
@ApiExcludeController()
@Controller('quality/complaints')
export class ComplaintActsController {
  constructor(
    private readonly pages: ComplaintPages,
    private readonly classComplaint: ClassComplaint,
    private readonly withdrawComplaint: WithdrawComplaint,
    private readonly withdrawStep: WithdrawComplaintStep,
    private readonly removeContact: RemoveComplaintContact,
  ) {}

  @Post(':id/class')
  @May('handle-complaints')
  class(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
  ): Answer {
    const act = (form: ClassComplaintForm) => this.classComplaint.execute(asked, id, form);
    return this.taken({ sent, viewer, id, of: 'class', says: 'said-complaint-classed' }, ClassComplaintForm, act);
  }

  @Post(':id/withdrawal')
  @May('handle-complaints')
  withdrawal(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
  ): Answer {
    const act = (form: WithdrawForm) => this.withdrawComplaint.execute(asked, id, form);
    return this.taken({ sent, viewer, id, of: 'withdrawal', says: 'said-complaint-withdrawn' }, WithdrawForm, act);
  }

  @Post(':id/steps/:stepId/withdrawal')
  @May('handle-complaints')
  stepWithdrawal(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
    @Param('stepId', ParseUUIDPipe) stepId: string,
  ): Answer {
    const act = (form: WithdrawForm) => this.withdrawStep.execute(asked, stepId, form);
    return this.taken({ sent, viewer, id, of: stepId, says: 'said-complaint-step-withdrawn' }, WithdrawForm, act);
  }

  @Post(':id/contact-removal')
  @May('handle-complaints')
  contactRemoval(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
  ): Answer {
    const act = () => this.removeContact.execute(asked, id);
    return this.taken({ sent, viewer, id, of: 'contact', says: 'said-complaint-contact-gone' }, RemoveContactForm, act);
  }

  private taken<Form extends object>(
    { sent, viewer, id, of, says }: { sent: SentForm; viewer: Viewer; id: string; of: string; says: string },
    form: new () => Form,
    act: (form: Form) => Promise<unknown>,
  ): Answer {
    return sent.take({
      ...{ form, act, timeZone: viewer.timeZone },
      next: () => `/quality/complaints/${id}`,
      says: () => ({ code: says, facts: {} }),
      again: (trouble) => this.pages.again(viewer, id, of, trouble),
    });
  }
}
