import { Controller, Get, Inject, Post, Query } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import { MoveBag } from '../../drying/move-bag.js';
import type { Asked } from '../../journal/entry-draft.js';
import { placesOf } from '../../plant/whole-plant.js';
import { May } from '../../platform/actor.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { NotFound } from '../../platform/refusal.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm, type TakenForScript } from '../../platform/web/sent-form.js';
import { MoveHereForm } from './dryer.form.js';
import { movesPage, type MovedBag } from './moves.page.js';

/** Bags are put at their places: scan after scan, the place stays chosen. */
@ApiExcludeController()
@Controller('dryer/moves')
export class MovesController {
  constructor(
    private readonly moveBag: MoveBag,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  @Get()
  @May('read')
  show(@Looking() viewer: Viewer, @Query('place') placeId?: string): Promise<VNode> {
    return this.page(viewer, placeId ?? null, null);
  }

  @Post()
  @May('move-bags')
  move(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
  ): Promise<VNode | TakenForScript | null> {
    return sent.take({
      form: MoveHereForm,
      timeZone: viewer.timeZone,
      act: async (form) => {
        const place = (await placesOf(this.reader, viewer.actor.siteId)).find(({ id }) => id === form.placeId);
        if (place === undefined) throw new NotFound('store-place', form.placeId);
        return { ...(await this.moveBag.execute(asked, form)), place: place.code };
      },
      next: ({ placeId }) => `/dryer/moves?place=${placeId}`,
      says: ({ number, place }) => ({ code: 'dryer-moved', facts: { bag: number, place } }),
      again: (trouble) => this.page(viewer, null, trouble),
    });
  }

  private async page(viewer: Viewer, placeId: string | null, trouble: FormTrouble | null): Promise<VNode> {
    const { siteId } = viewer.actor;
    const last = await this.reader.sql<MovedBag>`
      SELECT m."id", b."id" AS "bagId", b."number", p."code" AS "place", m."moved_at" AS "movedAt"
      FROM "bag_move" m JOIN "bulk_bag" b ON b."id" = m."bag_id" JOIN "store_place" p ON p."id" = m."place_id"
      WHERE b."site_id" = ${siteId} AND m."voided_by" IS NULL ORDER BY m."id" DESC LIMIT 8`;
    return movesPage({ viewer, places: await placesOf(this.reader, siteId), placeId, last, trouble });
  }
}
