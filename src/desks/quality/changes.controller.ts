import { Controller, Get, Inject, Post, Query } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import { ReviewChangesForm } from '../../disposition/change-review.form.js';
import { changesToLookAt } from '../../disposition/changes-to-look-at.js';
import { ReviewChanges } from '../../disposition/review-changes.js';
import type { Asked } from '../../journal/entry-draft.js';
import { waysOfEntries } from '../../journal/entry-ways.js';
import { namesOf } from '../../people/people.js';
import { May } from '../../platform/actor.js';
import { Clock, shifted } from '../../platform/clock.js';
import { HeavyReads } from '../../platform/database/heavy-reads.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { ChoiceField, WholeField } from '../../platform/web/fields.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm, type TakenForScript } from '../../platform/web/sent-form.js';
import { changesPage } from './changes.page.js';

const usualDays = 7;
const mostShown = 100;

export class ChangesQuery {
  @WholeField({ optional: true, least: 1, most: 366, says: 'How many days are looked back' })
  days?: number | null;

  @ChoiceField(['open', 'reviewed'], { optional: true })
  state?: string | null;
}

@ApiExcludeController()
@Controller('quality/changes')
export class ChangesController {
  constructor(
    private readonly reviewChanges: ReviewChanges,
    private readonly heavy: HeavyReads,
    private readonly clock: Clock,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  @Get()
  @May('read')
  show(@Looking() viewer: Viewer, @Query() query: ChangesQuery): Promise<VNode> {
    return this.page(viewer, query, null);
  }

  @Post()
  @May('decide')
  review(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Query() query: ChangesQuery,
  ): Promise<VNode | TakenForScript | null> {
    return sent.take({
      form: ReviewChangesForm,
      timeZone: viewer.timeZone,
      act: (form) => this.reviewChanges.execute(asked, form),
      next: () => `/quality/changes?days=${query.days ?? usualDays}`,
      says: ({ count }) => ({ code: 'said-reviewed', facts: { count } }),
      again: (trouble) => this.page(viewer, query, trouble),
    });
  }

  private async page(viewer: Viewer, query: ChangesQuery, trouble: FormTrouble | null): Promise<VNode> {
    const days = query.days ?? usualDays;
    const isReviewed = query.state === 'reviewed';
    const fromAt = shifted(this.clock.now(), -days * 86_400_000);
    const { siteId } = viewer.actor;
    const all = await this.heavy.snapshot((from) => changesToLookAt(from, siteId, { fromAt, isReviewed }));
    const changes = all.slice(0, mostShown);
    const names = await namesOf(
      this.reader,
      changes.flatMap(({ personId, review }) => [personId, review?.personId ?? null]).flatMap((id) => id ?? []),
    );
    const ways = await waysOfEntries(
      this.reader,
      changes.map(({ entryId }) => entryId),
    );
    return changesPage({
      viewer,
      days,
      isReviewed,
      changes,
      moreCount: all.length - changes.length,
      names,
      ways,
      trouble,
    });
  }
}
