import { Controller, Get, Inject, Post, Query, Res } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { FastifyReply } from 'fastify';
import type { VNode } from 'preact';
import { partOf } from '../../disposition/hold-part.js';
import { SetHoldClass } from '../../disposition/set-hold-class.js';
import { scopeKinds, type HoldPart, type HoldRow, type HoldScope } from '../../disposition/standings.js';
import type { Asked } from '../../journal/entry-draft.js';
import { goTo } from '../../people/go-to.js';
import { ownPath } from '../../people/own-path.js';
import { May, mayDo } from '../../platform/actor.js';
import { Clock } from '../../platform/clock.js';
import { HeavyReads } from '../../platform/database/heavy-reads.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { NotFound, Refusal } from '../../platform/refusal.js';
import { say } from '../../platform/sentences/sentences.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm, type TakenForScript } from '../../platform/web/sent-form.js';
import { settleScope } from '../../tracing/hold-scope.js';
import { PlaceHold } from '../../tracing/place-hold.js';
import { findSubjects } from '../find-subjects.js';
import { choicesOfFinding, choicesOfDelivery, widerChoices } from './hold-choices.js';
import { HoldFromPageForm, HoldNewQuery } from './hold-new.form.js';
import { holdChoosePage, holdNewPage, type HoldChoice } from './hold-new.page.js';
import { previewHold } from './hold-new.js';
import { pathOfTimes, shiftChoices } from './hold-times.js';

@ApiExcludeController()
@Controller('quality/holds/new')
export class HoldNewController {
  constructor(
    private readonly placeHold: PlaceHold,
    private readonly setHoldClass: SetHoldClass,
    private readonly heavy: HeavyReads,
    private readonly clock: Clock,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  @Get()
  @May('place-holds')
  async show(
    @Looking() viewer: Viewer,
    @Query() query: HoldNewQuery,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<VNode | null> {
    const { code = null, kind = null, id = null, next = null } = query;
    if (kind === 'delivery' && id !== null) {
      const { siteId } = viewer.actor;
      const choices = await choicesOfDelivery(this.reader, { siteId, deliveryId: id }, next);
      return this.choose(viewer, { choices, next });
    }
    if (kind !== null && kind !== 'delivery' && id !== null) return this.page(viewer, { ...query, kind, id }, null);
    if (code === null) return this.byTimes(viewer, query, reply);
    const choices = await this.choicesOf(viewer, code, next);
    const [only] = choices;
    if (only === undefined || choices.length > 1) return this.choose(viewer, { code, choices, next });
    return goTo(reply, only.href);
  }

  private async byTimes(viewer: Viewer, query: HoldNewQuery, reply: FastifyReply): Promise<VNode | null> {
    const { timeZone, actor } = viewer;
    const next = query.next ?? null;
    try {
      const path = await pathOfTimes(this.reader, { siteId: actor.siteId, timeZone }, query);
      return path === null ? await this.choose(viewer, { next }) : goTo(reply, path);
    } catch (error) {
      if (error instanceof Refusal) return this.choose(viewer, { next, refusal: say(error.code, error.facts) });
      if (!(error instanceof NotFound)) throw error;
      return this.choose(viewer, { next, refusal: say('code-not-found', { code: query.run ?? query.place ?? '' }) });
    }
  }

  private async choose(
    viewer: Viewer,
    {
      code = '',
      choices = null,
      next,
      refusal = null,
    }: {
      readonly code?: string;
      readonly choices?: readonly HoldChoice[] | null;
      readonly next: string | null;
      readonly refusal?: string | null;
    },
  ): Promise<VNode> {
    const shifts = await shiftChoices(this.reader, viewer.actor.siteId, this.clock.now());
    return holdChoosePage({ viewer, code, choices, next, shifts, refusal });
  }

  @Post()
  @May('place-holds')
  place(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
  ): Promise<VNode | TakenForScript | null> {
    const isQuality = mayDo(viewer.actor.roles, 'lift-holds');
    let goOn = '/';
    return sent.take({
      form: HoldFromPageForm,
      timeZone: viewer.timeZone,
      act: (form) => {
        goOn = form.next === null || form.next === undefined ? '/' : ownPath(form.next);
        return this.placeWithClass(asked, form, isQuality);
      },
      next: ({ id }) => (isQuality ? `/quality/holds/${id}` : goOn),
      says: ({ number }) => ({ code: 'said-hold-placed', facts: { hold: number } }),
      again: (trouble) => this.again(viewer, trouble),
    });
  }

  /** Placing and classing are two decisions; a quality officer may take both at once. */
  private async placeWithClass(asked: Asked, form: HoldFromPageForm, isQuality: boolean): Promise<HoldRow> {
    const { kind, id, reason, hazard = null } = form;
    const hold = await this.placeHold.execute(asked, { kind, id, ...partOf(form), reason });
    if (hazard === null || !isQuality) return hold;
    const key = asked.key === null ? null : `${asked.key}-class`;
    await this.setHoldClass.execute({ ...asked, key, seen: null }, { hold: hold.id, hazard, reason });
    return hold;
  }

  /** What could not be placed is shown again with its reach; where there is nothing to hold, one chooses anew. */
  private async again(viewer: Viewer, trouble: FormTrouble): Promise<VNode> {
    const entered = trouble.entered as Partial<Record<keyof Subject | 'next', string>>;
    const next = entered.next ?? null;
    const kind = scopeKinds.find((known) => known === entered.kind);
    if (kind === undefined) return this.choose(viewer, { next });
    try {
      const { id = '', fromCount, toCount, fromAt, untilAt } = entered;
      const counts = { fromCount: countOf(fromCount), toCount: countOf(toCount) };
      return await this.page(
        viewer,
        { kind, id, ...counts, fromAt: fromAt ?? null, untilAt: untilAt ?? null, next },
        trouble,
      );
    } catch (error) {
      if (error instanceof NotFound || error instanceof Refusal) return this.choose(viewer, { next });
      throw error;
    }
  }

  private async page(
    viewer: Viewer,
    { next = null, ...asked }: Subject & { readonly next?: string | null },
    trouble: FormTrouble | null,
  ): Promise<VNode> {
    const preview = await this.heavy.snapshot(async (from) => {
      return previewHold(from, await settleScope(from, viewer.actor.siteId, asked));
    });
    const others = await widerChoices(this.reader, preview, next);
    return holdNewPage({ viewer, preview, next, trouble, others });
  }

  private async choicesOf(viewer: Viewer, code: string, next: string | null): Promise<readonly HoldChoice[]> {
    const asked = { code, localTime: null, now: this.clock.now() };
    const { siteId } = viewer.actor;
    const found = await this.heavy.snapshot((from) => findSubjects(from, siteId, asked));
    // A lot whose time came twice is held whole all the same.
    const choices: HoldChoice[] = [];
    for (const finding of found) choices.push(...(await choicesOfFinding(this.reader, siteId, finding, next)));
    return choices.filter(({ href }, place) => choices.findIndex((one) => one.href === href) === place);
  }
}

type Subject = HoldScope & Partial<HoldPart>;

function countOf(entered: string | undefined): number | null {
  return entered === undefined ? null : Number(entered);
}
