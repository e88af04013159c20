import { Controller, Get, Param, ParseUUIDPipe, Post, Query, Req } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { FastifyRequest } from 'fastify';
import type { VNode } from 'preact';
import { namesOf, peopleWithPin } from '../../people/people.js';
import { ProveOther } from '../../people/prove-other.js';
import type { Asked } from '../../journal/entry-draft.js';
import { siteOf } from '../../plant/plant-facts.js';
import { May } from '../../platform/actor.js';
import { speakOnPaper } from '../../platform/sentences/language.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { PaperPageQuery } from '../../platform/web/paper-page.query.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm } from '../../platform/web/sent-form.js';
import type { IncomingLead } from '../../reconciliation/add-answer.js';
import { ConfirmOpening } from '../../reconciliation/confirm-opening.js';
import { AnswerHandoverForm } from '../../reconciliation/handover.form.js';
import { handoverPointsOf } from '../../reconciliation/handover-points.js';
import { handoverOf, handoverOfShift } from '../../reconciliation/handovers.js';
import { shiftToHandOver } from '../../reconciliation/shift-to-hand-over.js';
import { SignHandover } from '../../reconciliation/sign-handover.js';
import { LineHandoverForm } from './handover.form.js';
import { handoverDraftPage, handoverPage } from './handover.page.js';
import { LineDesk } from './line-desk.js';

/** The line goes from one lead to the next: six points, both sign. */
@ApiExcludeController()
@Controller('line/:lineId')
export class LineHandoverController {
  constructor(
    private readonly desk: LineDesk,
    private readonly signHandover: SignHandover,
    private readonly confirmOpening: ConfirmOpening,
    private readonly proveOther: ProveOther,
  ) {}

  @Get('handover')
  @May('run-line')
  draft(@Looking() viewer: Viewer, @Param('lineId', ParseUUIDPipe) lineId: string): Promise<VNode> {
    return this.draftAgain(viewer, lineId, null);
  }

  @Post('handover')
  @May('sign-accounts')
  sign(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Req() request: FastifyRequest,
    @Param('lineId', ParseUUIDPipe) lineId: string,
  ) {
    return sent.take({
      form: LineHandoverForm,
      timeZone: viewer.timeZone,
      act: async (form) => {
        const { loosePackCount = null, packCount = null, notes = null } = form;
        const incoming = await this.incomingOf(asked, form, request.ip);
        return this.signHandover.execute(asked, { lineId, loosePackCount, packCount, notes }, incoming);
      },
      next: ({ id }) => `/line/${lineId}/handovers/${id}`,
      says: ({ incomingPersonId }) => {
        return { code: incomingPersonId === null ? 'said-handed-over-alone' : 'said-handed-over', facts: {} };
      },
      again: (trouble) => this.draftAgain(viewer, lineId, trouble),
    });
  }

  @Get('handovers/:handoverId')
  @May('read')
  one(
    @Looking() viewer: Viewer,
    @Param('lineId', ParseUUIDPipe) lineId: string,
    @Param('handoverId', ParseUUIDPipe) handoverId: string,
    @Query() query: PaperPageQuery,
  ): Promise<VNode> {
    return this.page(viewer, { lineId, handoverId, isForPaper: query.for === 'paper' }, null);
  }

  @Post('handovers/:handoverId')
  @May('run-line')
  confirm(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('lineId', ParseUUIDPipe) lineId: string,
    @Param('handoverId', ParseUUIDPipe) handoverId: string,
  ) {
    return sent.take({
      form: AnswerHandoverForm,
      timeZone: viewer.timeZone,
      act: (form) => this.confirmOpening.execute(asked, handoverId, form),
      next: () => `/line/${lineId}`,
      says: () => ({ code: 'said-opening-confirmed', facts: {} }),
      again: (trouble) => this.page(viewer, { lineId, handoverId }, trouble),
    });
  }

  /** The incoming lead proves who they are without ending the session of the outgoing one; null: signed alone. */
  private async incomingOf(asked: Asked, form: LineHandoverForm, address: string): Promise<IncomingLead | null> {
    if (form.alone === true) return null;
    const { badge, person, pin, code, password } = form;
    const { id: personId } = await this.proveOther.execute(
      asked.actor,
      { badge, person, pin, code, password },
      { address },
    );
    const disagreement = form.disagreement ?? null;
    return { personId, agrees: disagreement === null, disagreement };
  }

  private async draftAgain(viewer: Viewer, lineId: string, trouble: FormTrouble | null): Promise<VNode> {
    const { reader } = this.desk;
    const { siteId } = viewer.actor;
    const view = await this.desk.shift(viewer, lineId, null);
    const { line, hopper, level, now } = view;
    const shift = await shiftToHandOver(reader, { siteId, lineId, now });
    const signed = await handoverOfShift(reader, lineId, shift.startsAt);
    if (signed !== null) return this.page(viewer, { lineId, handoverId: signed.id }, trouble);
    const asked = { siteId, line, fromAt: shift.startsAt, now };
    const points =
      hopper === null || level === null
        ? null
        : await handoverPointsOf(reader, { ...asked, hopperId: hopper.id, level });
    const people = viewer.deviceCode === null ? [] : await peopleWithPin(reader, siteId);
    const others = people.filter(({ id }) => id !== viewer.actor.personId);
    return handoverDraftPage({ viewer, at: view, shift, points, people: others, trouble });
  }

  private async page(
    viewer: Viewer,
    asked: { readonly lineId: string; readonly handoverId: string; readonly isForPaper?: boolean },
    trouble: FormTrouble | null,
  ): Promise<VNode> {
    const { lineId, handoverId, isForPaper } = asked;
    const { paperLanguage } = await siteOf(this.desk.reader, viewer.actor.siteId);
    if (isForPaper === true) speakOnPaper(paperLanguage);
    const at = await this.desk.line(viewer, lineId);
    const handover = await handoverOf(this.desk.reader, viewer.actor.siteId, handoverId);
    const { outgoingPersonId, answeredBy } = handover;
    const names = await namesOf(this.desk.reader, [outgoingPersonId, ...(answeredBy === null ? [] : [answeredBy])]);
    return handoverPage({ viewer, at, handover, names, trouble, paperLanguage });
  }
}
