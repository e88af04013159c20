import { Controller, Get, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import type { Asked } from '../../journal/entry-draft.js';
import { shiftAt } from '../../plant/plant-facts.js';
import { May } from '../../platform/actor.js';
import { HeavyReads } from '../../platform/database/heavy-reads.js';
import { shifted } from '../../platform/clock.js';
import { NotFound } from '../../platform/refusal.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm } from '../../platform/web/sent-form.js';
import { draftAccount } from '../../reconciliation/draft-account.js';
import { SignAccount } from '../../reconciliation/sign-account.js';
import { LineAccountForm } from './account.form.js';
import { lineAccountPage } from './account-draft.page.js';
import { LineDesk } from './line-desk.js';
import type { LineNow } from './line-rows.js';

/** So long before its end a shift's account may be looked at as that of the shift before. */
const earlyMinutes = 60;

/** The account of a shift, as the records stand, and the lead's signature under it. */
@ApiExcludeController()
@Controller('line/:lineId/account')
export class LineAccountController {
  constructor(
    private readonly desk: LineDesk,
    private readonly heavy: HeavyReads,
    private readonly signAccount: SignAccount,
  ) {}

  @Get()
  @May('read')
  draft(@Looking() viewer: Viewer, @Param('lineId', ParseUUIDPipe) lineId: string): Promise<VNode> {
    return this.page(viewer, lineId, null);
  }

  @Post()
  @May('sign-accounts')
  sign(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('lineId', ParseUUIDPipe) lineId: string,
  ) {
    return sent.take({
      form: LineAccountForm,
      timeZone: viewer.timeZone,
      act: async (form) => {
        const { hopper } = await this.desk.line(viewer, lineId);
        return this.signAccount.execute(asked, { ...form, hopper: hopper?.id ?? '' });
      },
      next: ({ id }) => `/accounts/${id}`,
      says: ({ number }) => ({ code: 'said-account', facts: { account: number } }),
      again: (trouble) => this.page(viewer, lineId, trouble),
    });
  }

  private async page(viewer: Viewer, lineId: string, trouble: FormTrouble | null): Promise<VNode> {
    const { siteId } = viewer.actor;
    const at = await this.desk.line(viewer, lineId);
    const { hopper } = at;
    if (hopper === null) throw new NotFound('hopper', at.line.code);
    const span = await this.spanOf(siteId, at);
    const account = await this.heavy.snapshot((from) => draftAccount(from, siteId, { hopperId: hopper.id, ...span }));
    return lineAccountPage({ viewer, at, account, isOver: span.untilAt <= at.now, trouble });
  }

  /** The shift that runs; in its first hour the one before, which is what there is to be signed. */
  private async spanOf(siteId: string, { shift, now }: LineNow): Promise<{ fromAt: string; untilAt: string }> {
    if (now >= shifted(shift.startsAt, earlyMinutes * 60_000)) return { fromAt: shift.startsAt, untilAt: shift.endsAt };
    const before = await shiftAt(this.desk.reader, siteId, shifted(shift.startsAt, -1));
    return { fromAt: before.startsAt, untilAt: before.endsAt };
  }
}
