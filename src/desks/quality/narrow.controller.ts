import { Controller, Get, Param, ParseUUIDPipe, Post, Query, Req } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import { WidenHold } from '../../disposition/widen-hold.js';
import type { Asked } from '../../journal/entry-draft.js';
import { partProof } from '../../people/proof.form.js';
import { ProveAgain } from '../../people/prove-again.js';
import { May } from '../../platform/actor.js';
import { HeavyReads } from '../../platform/database/heavy-reads.js';
import { NotFound, Refusal } from '../../platform/refusal.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { instantOfLocal, NoSuchTime } from '../../platform/web/local-time.js';
import { Asking, Looking, type HouseRequest, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm, type TakenForScript } from '../../platform/web/sent-form.js';
import type { NarrowedParts } from '../../tracing/hold.form.js';
import { NarrowHold } from '../../tracing/narrow-hold.js';
import { narrowChoicePage } from './narrow-choice.page.js';
import { NarrowOnPageForm, NarrowQuery, WidenOnPageForm } from './narrow.form.js';
import { narrowPage } from './narrow.page.js';
import { readChoice, readNarrowing } from './narrow.js';

type Answer = Promise<VNode | TakenForScript | null>;

@ApiExcludeController()
@Controller('quality/holds/:id')
export class NarrowController {
  constructor(
    private readonly narrowHold: NarrowHold,
    private readonly widenHold: WidenHold,
    private readonly proveAgain: ProveAgain,
    private readonly heavy: HeavyReads,
  ) {}

  @Get('narrow')
  @May('lift-holds')
  async show(
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
    @Query() query: NarrowQuery,
  ): Promise<VNode> {
    if (query.look == null) return this.choice(viewer, id, query, null);
    try {
      return await this.preview(viewer, id, partsOf(query, viewer.timeZone), null);
    } catch (error) {
      if (error instanceof NoSuchTime) return this.choice(viewer, id, query, new Refusal('field-not-local-time'));
      if (error instanceof Refusal) return this.choice(viewer, id, query, error);
      throw error;
    }
  }

  @Post('narrow')
  @May('lift-holds')
  narrow(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Req() request: HouseRequest,
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
  ): Answer {
    return sent.take({
      form: NarrowOnPageForm,
      timeZone: viewer.timeZone,
      act: async (form) => {
        const { proof, rest } = partProof(form);
        await this.proveAgain.execute(asked.actor, proof, { address: request.ip });
        const { narrowReason: reason, ...parts } = rest;
        return this.narrowHold.execute(asked, { ...parts, hold: id, reason });
      },
      next: () => `/quality/holds/${id}`,
      says: ({ number, partCount }) => ({ code: 'said-narrowed', facts: { hold: number, count: partCount } }),
      again: (trouble) => this.again(viewer, id, trouble),
    });
  }

  @Post('widen')
  @May('lift-holds')
  widen(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
  ): Answer {
    return sent.take({
      form: WidenOnPageForm,
      timeZone: viewer.timeZone,
      act: ({ narrowing, widenReason: reason }) => this.widenHold.execute(asked, { narrowing, reason }),
      next: () => `/quality/holds/${id}`,
      says: () => ({ code: 'said-widened', facts: {} }),
      again: (trouble) => this.choice(viewer, id, {}, new Refusal(trouble.code, trouble.facts)),
    });
  }

  /** What could not be signed is shown again with what it would free; where that has changed, one chooses anew. */
  private async again(viewer: Viewer, id: string, trouble: FormTrouble): Promise<VNode> {
    const entered = trouble.entered as Readonly<Record<string, string | string[] | undefined>>;
    const list = (name: string): string[] => [entered[name] ?? []].flat();
    const one = (name: string): string | null => [entered[name] ?? []].flat()[0] ?? null;
    const parts = {
      ...{ bagIds: list('bagIds'), palletIds: list('palletIds'), lotIds: list('lotIds') },
      ...{ run: one('run'), fromAt: one('fromAt'), untilAt: one('untilAt') },
    };
    try {
      return await this.preview(viewer, id, parts, trouble);
    } catch (error) {
      if (error instanceof Refusal || error instanceof NotFound) {
        return this.choice(viewer, id, {}, new Refusal(trouble.code, trouble.facts));
      }
      throw error;
    }
  }

  private async preview(viewer: Viewer, id: string, parts: NarrowedParts, trouble: FormTrouble | null): Promise<VNode> {
    const read = await this.heavy.snapshot((from) => readNarrowing(from, viewer.actor.siteId, id, parts));
    return narrowPage({ viewer, ...read, parts, way: await this.proveAgain.wayOf(viewer.actor), trouble });
  }

  private async choice(viewer: Viewer, id: string, chosen: NarrowQuery, refusal: Refusal | null): Promise<VNode> {
    const read = await this.heavy.snapshot((from) => readChoice(from, viewer.actor.siteId, id));
    return narrowChoicePage({ viewer, ...read, chosen, refusal });
  }
}

/** @throws {NoSuchTime} for a time that the plant's clocks did not show */
function partsOf({ fromAt, untilAt, ...chosen }: NarrowQuery, timeZone: string): NarrowedParts {
  const instant = (local: string | null | undefined): string | null =>
    local === null || local === undefined ? null : instantOfLocal(local, timeZone);
  return { ...chosen, fromAt: instant(fromAt), untilAt: instant(untilAt) };
}
