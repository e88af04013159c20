import { Controller, Get, Inject, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import { CorrectWeighing } from '../../drying/correct-weighing.js';
import type { Asked } from '../../journal/entry-draft.js';
import { May } from '../../platform/actor.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { NotFound, Refusal } from '../../platform/refusal.js';
import { kilogramsText } from '../../platform/web/figures-text.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm, type TakenForScript } from '../../platform/web/sent-form.js';
import { CorrectionRipple } from '../../tracing/correction-ripple.js';
import { takeByRipple } from '../../tracing/ripple-step.js';
import { CorrectHereForm } from './dryer.form.js';
import { mayCorrect } from './dryer.page.js';
import { weighingPage, type OwnWeighing } from './weighing.page.js';

/** A person puts right what they typed themselves. */
@ApiExcludeController()
@Controller('dryer/weighings')
export class OwnWeighingController {
  constructor(
    private readonly correctWeighing: CorrectWeighing,
    private readonly ripple: CorrectionRipple,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  @Get(':id')
  @May('read')
  show(@Looking() viewer: Viewer, @Param('id', ParseUUIDPipe) id: string): Promise<VNode> {
    return this.page(viewer, id, null);
  }

  @Post(':id')
  @May('fill-bags')
  correct(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
  ): Promise<VNode | TakenForScript | null> {
    return takeByRipple(sent, {
      ...{ viewer, asked, ripple: this.ripple, form: CorrectHereForm, back: viewer.path, use: 'tablet' },
      correct: async (asking, form) => {
        const weighing = await this.weighing(viewer, id);
        if (!mayCorrect(viewer, weighing)) throw new Refusal('weighing-not-yours', { bag: weighing.bagNumber });
        const { grossGrams = null, tareGrams = null, reason } = form;
        const right = { grossGrams, tareGrams, isPresetTare: tareGrams === null ? null : false };
        const corrected = await this.correctWeighing.execute(asking, id, { why: 'incorrect-data', reason, ...right });
        return { ...corrected, ...weighing, nowGrams: corrected.netGrams ?? 0 };
      },
      next: ({ dryerId }) => (dryerId === null ? '/dryer' : `/dryer/${dryerId}`),
      says: ({ bagNumber, nowGrams }) => ({
        code: 'dryer-corrected',
        facts: { bag: bagNumber, kilograms: kilogramsText(nowGrams) },
      }),
      again: (trouble) => this.page(viewer, id, trouble),
    });
  }

  private async page(viewer: Viewer, id: string, trouble: FormTrouble | null): Promise<VNode> {
    return weighingPage({ viewer, weighing: await this.weighing(viewer, id), trouble });
  }

  private async weighing(viewer: Viewer, id: string): Promise<OwnWeighing> {
    const [row] = await this.reader.sql<OwnWeighing>`
      SELECT w."id", b."number" AS "bagNumber", r."dryer_id" AS "dryerId", w."gross_grams" AS "grossGrams",
        w."tare_grams" AS "tareGrams", w."net_grams" AS "netGrams", w."weighed_at" AS "weighedAt",
        w."person_id" AS "personId", t."status"
      FROM "bag_weighing" w JOIN "bulk_bag" b ON b."id" = w."bag_id" JOIN "bag_state" t ON t."bag_id" = b."id"
      LEFT JOIN "dryer_run" r ON r."id" = b."dryer_run_id"
      WHERE w."id" = ${id} AND b."site_id" = ${viewer.actor.siteId} AND w."voided_by" IS NULL`;
    if (row === undefined) throw new NotFound('bag-weighing', id);
    return row;
  }
}
