import { Controller, Get, Inject, Post, Query, Res } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { FastifyReply } from 'fastify';
import type { VNode } from 'preact';
import { SetHoldClass } from '../../disposition/set-hold-class.js';
import { scopeKinds, type HoldRow } from '../../disposition/standings.js';
import type { Asked } from '../../journal/entry-draft.js';
import { ownPath } from '../../people/own-path.js';
import { May, mayDo } from '../../platform/actor.js';
import { Clock } from '../../platform/clock.js';
import { HeavyReads } from '../../platform/database/heavy-reads.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { NotFound, Refusal } from '../../platform/refusal.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm, type TakenForScript } from '../../platform/web/sent-form.js';
import { PlaceHold } from '../../tracing/place-hold.js';
import { findSubjects } from '../find-subjects.js';
import { choicesOfFinding, choicesOfDelivery, widerChoices } from './hold-choices.js';
import { HoldFromPageForm, HoldNewQuery } from './hold-new.form.js';
import { holdChoosePage, holdNewPage, type HoldChoice } from './hold-new.page.js';
import { previewHold, type HoldSubject } from './hold-new.js';

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
      return holdChoosePage({ viewer, code: '', choices: await choicesOfDelivery(this.reader, id, next), next });
    }
    if (kind !== null && kind !== 'delivery' && id !== null) return this.page(viewer, subjectOf(query), next, null);
    if (code === null) return holdChoosePage({ viewer, code: '', choices: null, next });
    const choices = await this.choicesOf(viewer, code, next);
    const [only] = choices;
    if (only === undefined || choices.length > 1) return holdChoosePage({ viewer, code, choices, next });
    void reply.status(303).header('Location', only.href);
    return null;
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
    const { kind, id, fromCount = null, toCount = null, reason, hazard = null } = form;
    const hold = await this.placeHold.execute(asked, { kind, id, fromCount, toCount, reason });
    if (hazard === null || !isQuality) return hold;
    const key = asked.key === null ? null : `${asked.key}-class`;
    await this.setHoldClass.execute({ ...asked, key, seen: null }, { hold: hold.id, hazard, reason });
    return hold;
  }

  /** What could not be placed is shown again with its reach; where there is nothing to hold, one chooses anew. */
  private async again(viewer: Viewer, trouble: FormTrouble): Promise<VNode> {
    const entered = trouble.entered as Partial<Record<'kind' | 'id' | 'fromCount' | 'toCount' | 'next', string>>;
    const next = entered.next ?? null;
    const chooseAnew = (): VNode => holdChoosePage({ viewer, code: '', choices: null, next });
    if (!scopeKinds.some((kind) => kind === entered.kind)) return chooseAnew();
    try {
      return await this.page(viewer, subjectOf(entered), next, trouble);
    } catch (error) {
      if (error instanceof NotFound || error instanceof Refusal) return chooseAnew();
      throw error;
    }
  }

  private async page(
    viewer: Viewer,
    subject: HoldSubject,
    next: string | null,
    trouble: FormTrouble | null,
  ): Promise<VNode> {
    const preview = await this.heavy.snapshot((from) => previewHold(from, subject));
    const others = await widerChoices(this.reader, subject, next);
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

function subjectOf(query: {
  readonly kind?: string | null;
  readonly id?: string | null;
  readonly fromCount?: number | string | null;
  readonly toCount?: number | string | null;
}): HoldSubject {
  const { kind, id, fromCount = null, toCount = null } = query;
  return {
    kind: kind as HoldSubject['kind'],
    id: id ?? '',
    fromCount: fromCount === null ? null : Number(fromCount),
    toCount: toCount === null ? null : Number(toCount),
  };
}
