import { Controller, Get, Inject, Param, ParseUUIDPipe, Post, Query } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import { AssignGrade } from '../../disposition/assign-grade.js';
import { DecideOnBags } from '../../disposition/decide-on-bags.js';
import { Decide } from '../../disposition/decide.js';
import { DecideOnBagsForm } from '../../disposition/decision.form.js';
import type { Asked } from '../../journal/entry-draft.js';
import { May } from '../../platform/actor.js';
import { Clock } from '../../platform/clock.js';
import { HeavyReads } from '../../platform/database/heavy-reads.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { FlagField, TextField } from '../../platform/web/fields.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm, type TakenForScript } from '../../platform/web/sent-form.js';
import { readBagFile } from './bag-file.js';
import { readBagReach } from '../../tracing/bag-reach.js';
import { bagFilePage } from './bag-file.page.js';
import { readBagGroup } from './bag-group.js';
import { bagGroupPage } from './bag-group.page.js';
import { DecisionOnOneForm, GradeOfBagForm } from './decision-on-one.form.js';
import { fileTrouble, type FileTrouble } from './file-trouble.js';
import { secondPeopleOf } from './second-people.js';

/** Which bags are looked at together: a group of the desk, or the waiting ones that a lot may hold sugar of. */
export class BagGroupQuery {
  @TextField({ optional: true, most: 200 })
  group?: string | null;

  @TextField({ optional: true, most: 40 })
  lot?: string | null;
}

export class BagFileQuery {
  @FlagField({ optional: true, says: 'Whether to follow how far it reaches' })
  reach?: boolean | null;
}

type Answer = Promise<VNode | TakenForScript | null>;

@ApiExcludeController()
@Controller('quality/bags')
export class BagDecisionController {
  // eslint-disable-next-line max-params -- one bag and several, their grade, and how far one reaches
  constructor(
    private readonly decide: Decide,
    private readonly decideOnBags: DecideOnBags,
    private readonly assignGrade: AssignGrade,
    private readonly clock: Clock,
    private readonly heavy: HeavyReads,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  @Get()
  @May('read')
  together(@Looking() viewer: Viewer, @Query() query: BagGroupQuery): Promise<VNode> {
    return this.group(viewer, query, null);
  }

  @Post()
  @May('decide')
  decideTogether(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Query() query: BagGroupQuery,
  ): Answer {
    return sent.take({
      form: DecideOnBagsForm,
      timeZone: viewer.timeZone,
      act: (form) => this.decideOnBags.execute(asked, form),
      next: () => '/quality',
      says: ({ verdict, bags }) => ({ code: `said-bags-${verdict}`, facts: { count: bags.length } }),
      again: async (trouble) => this.group(viewer, query, await fileTrouble(this.reader, viewer, 'decision', trouble)),
    });
  }

  @Get(':id')
  @May('read')
  one(
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
    @Query() { reach }: BagFileQuery,
  ): Promise<VNode> {
    return this.file(viewer, id, null, reach === true);
  }

  @Post(':id/decision')
  @May('decide')
  decideOnOne(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
  ): Answer {
    return sent.take({
      form: DecisionOnOneForm,
      timeZone: viewer.timeZone,
      act: (form) => this.decide.execute(asked, { ...form, kind: 'bulk-bag', subject: id }),
      next: () => `/quality/bags/${id}`,
      says: ({ verdict }) => ({ code: `said-${verdict}`, facts: {} }),
      again: async (trouble) => this.file(viewer, id, await fileTrouble(this.reader, viewer, 'decision', trouble)),
    });
  }

  @Post(':id/grade')
  @May('decide')
  grade(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
  ): Answer {
    return sent.take({
      form: GradeOfBagForm,
      timeZone: viewer.timeZone,
      act: (form) => this.assignGrade.execute(asked, { ...form, bag: id }),
      next: () => `/quality/bags/${id}`,
      says: () => ({ code: 'said-grade', facts: {} }),
      again: async (trouble) => this.file(viewer, id, await fileTrouble(this.reader, viewer, 'grade', trouble)),
    });
  }

  private async group(viewer: Viewer, query: BagGroupQuery, trouble: FileTrouble | null): Promise<VNode> {
    const { actor } = viewer;
    const { title, bags, address } = await readBagGroup(this.reader, actor.siteId, query, this.clock.now());
    const seconds = await secondPeopleOf(this.reader, actor);
    return bagGroupPage({ viewer, title, query: address, bags, seconds, trouble });
  }

  private async file(viewer: Viewer, id: string, trouble: FileTrouble | null, isReachAsked = false): Promise<VNode> {
    const file = await readBagFile(this.reader, viewer.actor, id);
    const { siteId } = viewer.actor;
    const reach = isReachAsked ? await this.heavy.snapshot((from) => readBagReach(from, siteId, file.bag.id)) : null;
    return bagFilePage({ viewer, file, reach, trouble });
  }
}
