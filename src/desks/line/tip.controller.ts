import { Controller, Get, Param, ParseUUIDPipe, Post, Query } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import { EndTip } from '../../hopper/end-tip.js';
import { TipBag, type TipAnswer } from '../../hopper/tip-bag.js';
import { TipOneOfSeveral } from '../../hopper/tip-one-of-several.js';
import { tipOf } from '../../hopper/tips.js';
import type { Asked } from '../../journal/entry-draft.js';
import { May, MayBeQueued } from '../../platform/actor.js';
import type { Instant } from '../../platform/clock.js';
import { Refusal } from '../../platform/refusal.js';
import { kilogramsText } from '../../platform/web/figures-text.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Asking, Looking, type Said, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm } from '../../platform/web/sent-form.js';
import { CorrectionRipple } from '../../tracing/correction-ripple.js';
import { takeByRipple } from '../../tracing/ripple-step.js';
import { LineDesk } from './line-desk.js';
import { LineOffForm, LineTipForm, LineUnreadForm, RefusedBagForm } from './line.form.js';
import { colleaguesOf, scalesOf } from './line-rows.js';
import { shiftPage } from './shift.page.js';
import { alreadyInPage, latePage, offPage, unreadPage } from './tip.page.js';
import { BagQuery, LateQuery } from './tip.query.js';

/** Bags into the hopper: whole, part, late, unread, and those that are in already. */
@ApiExcludeController()
@Controller('line/:lineId')
export class LineTipController {
  constructor(
    private readonly desk: LineDesk,
    private readonly tipBag: TipBag,
    private readonly endTip: EndTip,
    private readonly tipOneOfSeveral: TipOneOfSeveral,
    private readonly ripple: CorrectionRipple,
  ) {}

  @Post('tips')
  @May('tip-bags')
  @MayBeQueued()
  tip(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('lineId', ParseUUIDPipe) lineId: string,
  ) {
    return this.take(sent, { asked, viewer, lineId }, async (trouble) =>
      shiftPage({ viewer, view: await this.desk.shift(viewer, lineId, bagEntered(trouble)), trouble }),
    );
  }

  @Get('late')
  @May('tip-bags')
  async late(
    @Looking() viewer: Viewer,
    @Param('lineId', ParseUUIDPipe) lineId: string,
    @Query() known: LateQuery,
  ): Promise<VNode> {
    return latePage({ viewer, at: await this.desk.line(viewer, lineId), known });
  }

  @Post('late')
  @May('tip-bags')
  @MayBeQueued()
  enterLate(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('lineId', ParseUUIDPipe) lineId: string,
  ) {
    return this.take(sent, { asked, viewer, lineId }, async (trouble) =>
      latePage({ viewer, at: await this.desk.line(viewer, lineId), trouble }),
    );
  }

  @Post('late/look')
  @May('tip-bags')
  lookAtLate(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('lineId', ParseUUIDPipe) lineId: string,
  ) {
    return takeByRipple(sent, {
      ...{ viewer, asked, ripple: this.ripple, form: LineTipForm, times: ['openedAt'], use: 'tablet' },
      correct: async (asking, form) => {
        const hopperId = await this.hopperId(viewer, lineId, { asked, openedAt: form.openedAt });
        return this.tipBag.execute(asking, { ...form, hopperId });
      },
      back: `/line/${lineId}/late`,
      next: () => `/line/${lineId}`,
      says: tippedSays,
      again: async (trouble) => latePage({ viewer, at: await this.desk.line(viewer, lineId), trouble }),
    });
  }

  @Post('refusals')
  @May('tip-bags')
  goOnFromRefusal(@Sent() sent: SentForm, @Looking() viewer: Viewer, @Param('lineId', ParseUUIDPipe) lineId: string) {
    return sent.take({
      form: RefusedBagForm,
      timeZone: viewer.timeZone,
      act: async ({ bag }) => ({ bag, isRefused: await this.desk.meetRefusal(viewer, lineId, bag) }),
      // What is not refused any more is offered like any bag.
      next: ({ bag, isRefused }) =>
        `/line/${lineId}${isRefused ? '/already-in?bag=' : '?scan='}${encodeURIComponent(bag)}`,
      again: async () => shiftPage({ viewer, view: await this.desk.shift(viewer, lineId, null) }),
    });
  }

  @Get('already-in')
  @May('tip-bags')
  async alreadyIn(
    @Looking() viewer: Viewer,
    @Param('lineId', ParseUUIDPipe) lineId: string,
    @Query() query: BagQuery,
  ): Promise<VNode> {
    return alreadyInPage({ viewer, at: await this.desk.line(viewer, lineId), bag: query.bag ?? '' });
  }

  @Post('already-in')
  @May('tip-bags')
  enterAlreadyIn(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('lineId', ParseUUIDPipe) lineId: string,
  ) {
    return this.take(sent, { asked, viewer, lineId }, async (trouble) => {
      const at = await this.desk.line(viewer, lineId);
      return alreadyInPage({ viewer, at, bag: bagEntered(trouble) ?? '', trouble });
    });
  }

  @Get('unread')
  @May('tip-bags')
  unread(@Looking() viewer: Viewer, @Param('lineId', ParseUUIDPipe) lineId: string): Promise<VNode> {
    return this.unreadAgain(viewer, lineId, null);
  }

  @Post('unread')
  @May('tip-bags')
  enterUnread(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('lineId', ParseUUIDPipe) lineId: string,
  ) {
    return sent.take({
      form: LineUnreadForm,
      times: ['openedAt'],
      timeZone: viewer.timeZone,
      act: async ({ first, second, third, fourth, ...form }) => {
        const candidates = [first, second, third, fourth].flatMap((bag) => (bag == null ? [] : [{ bag }]));
        const hopperId = await this.hopperId(viewer, lineId, { asked, openedAt: form.openedAt });
        return this.tipOneOfSeveral.execute(asked, { ...form, candidates, hopperId, isOff: true });
      },
      next: () => `/line/${lineId}`,
      says: () => ({ code: 'said-tipped-unread', facts: {} }),
      again: (trouble) => this.unreadAgain(viewer, lineId, trouble),
    });
  }

  @Get('off/:tipId')
  @May('tip-bags')
  off(
    @Looking() viewer: Viewer,
    @Param('lineId', ParseUUIDPipe) lineId: string,
    @Param('tipId', ParseUUIDPipe) tipId: string,
  ): Promise<VNode> {
    return this.offAgain(viewer, { lineId, tipId }, null);
  }

  @Post('off/:tipId')
  @May('tip-bags')
  @MayBeQueued()
  endIt(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('lineId', ParseUUIDPipe) lineId: string,
    @Param('tipId', ParseUUIDPipe) tipId: string,
  ) {
    return sent.take({
      form: LineOffForm,
      times: ['offAt'],
      timeZone: viewer.timeZone,
      act: (form) => this.endTip.execute(asked, tipId, form),
      next: () => `/line/${lineId}`,
      says: ({ pouredGrams }) => ({ code: 'said-off', facts: { kilograms: kilogramsText(pouredGrams) } }),
      again: (trouble) => this.offAgain(viewer, { lineId, tipId }, trouble),
    });
  }

  private take(
    sent: SentForm,
    { asked, viewer, lineId }: { readonly asked: Asked; readonly viewer: Viewer; readonly lineId: string },
    again: (trouble: FormTrouble) => Promise<VNode>,
  ) {
    return sent.take({
      form: LineTipForm,
      times: ['openedAt'],
      timeZone: viewer.timeZone,
      act: async (form) => {
        const hopperId = await this.hopperId(viewer, lineId, { asked, openedAt: form.openedAt });
        return this.tipBag.execute(asked, { ...form, hopperId });
      },
      next: ({ id, offAt }) => (offAt === null ? `/line/${lineId}/off/${id}` : `/line/${lineId}`),
      says: tippedSays,
      again,
    });
  }

  /** The hopper that fed the line when the spout was opened. */
  private async hopperId(
    viewer: Viewer,
    lineId: string,
    { asked, openedAt }: { readonly asked: Asked; readonly openedAt: Instant | null | undefined },
  ): Promise<string> {
    const when = { happening: asked.happening ?? null, statedAt: openedAt ?? null };
    const { hopper, line } = await this.desk.lineThen(viewer, lineId, when);
    if (hopper === null) throw new Refusal('line-has-no-hopper', { line: line.code });
    return hopper.id;
  }

  private async offAgain(
    viewer: Viewer,
    { lineId, tipId }: { readonly lineId: string; readonly tipId: string },
    trouble: FormTrouble | null,
  ): Promise<VNode> {
    const { siteId } = viewer.actor;
    const at = await this.desk.line(viewer, lineId);
    const tip = await tipOf(this.desk.reader, siteId, tipId);
    return offPage({ viewer, at, tip, scales: await scalesOf(this.desk.reader, siteId), trouble });
  }

  private async unreadAgain(viewer: Viewer, lineId: string, trouble: FormTrouble | null): Promise<VNode> {
    const { siteId, personId } = viewer.actor;
    const at = await this.desk.line(viewer, lineId);
    return unreadPage({ viewer, at, people: await colleaguesOf(this.desk.reader, siteId, personId), trouble });
  }
}

function tippedSays({ bag, netGrams, offAt, broken }: TipAnswer): Said {
  const facts = { bag, kilograms: kilogramsText(netGrams) };
  if (broken.length > 0) return { code: 'said-tipped-broken', facts };
  return { code: offAt === null ? 'said-hangs' : 'said-tipped', facts };
}

function bagEntered({ entered }: FormTrouble): string | null {
  const bag = entered['bag'];
  return typeof bag === 'string' ? bag : null;
}
