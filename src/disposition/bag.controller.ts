import { Controller, Get, Inject, Param, ParseUUIDPipe, Query } from '@nestjs/common';
import type { VNode } from 'preact';
import { weighingsOf } from '../drying/bag-weighings.js';
import { bagPage as bagsBefore, findBag, type BagRow } from '../drying/bulk-bags.js';
import { dryerRunOf } from '../drying/dryer-runs.js';
import { receiptOf } from '../drying/goods-receipts.js';
import { listed, pageOf } from '../platform/web/listed.js';
import { laboratoryStandingOf } from '../laboratory/bag-results.js';
import { gradeOf, placeOf } from '../plant/plant-facts.js';
import { May } from '../platform/actor.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { NotFound } from '../platform/refusal.js';
import { PageQuery } from '../platform/web/page-query.js';
import { Looking, type Viewer } from '../platform/web/request.js';
import { bagPage, type WholeBag } from './bag.page.js';
import { bagsPage, type BagLine } from './bags.page.js';
import { decisionsOf, gradeAssignmentsOf } from './decisions.js';
import { bagStandingOf, standingsOf } from './standings.js';
import { stateWord } from './worst-state.js';

@Controller('bags')
export class BagController {
  constructor(@Inject(READER) private readonly reader: ReadFrom) {}

  @Get()
  @May('read')
  async list(@Looking() viewer: Viewer, @Query() query: PageQuery): Promise<VNode> {
    const page = pageOf(query);
    const { items, next } = listed(await bagsBefore(this.reader, viewer.actor.siteId, page), page);
    const standings = await standingsOf(this.reader, items);
    const bags = items.map((bag): BagLine => {
      const standing = standings.get(bag.id);
      const state = stateWord(standing?.decision.verdict ?? 'waiting', standing?.isOnHold ?? false);
      return { ...bag, state };
    });
    return bagsPage({ viewer, bags, next });
  }

  @Get(':id')
  @May('read')
  async one(@Looking() viewer: Viewer, @Param('id', ParseUUIDPipe) id: string): Promise<VNode> {
    const bag = await findBag(this.reader, viewer.actor.siteId, id);
    return bagPage({ viewer, whole: await this.wholeBag(bag) });
  }

  private async wholeBag(bag: BagRow): Promise<WholeBag> {
    const { decision, holds, gradeId, isOnHold } = await bagStandingOf(this.reader, bag);
    return {
      bag,
      state: stateWord(decision.verdict, isOnHold),
      gradeName: (await gradeOf(this.reader, gradeId)).name,
      originNumber: await this.originOf(bag),
      placeCode: await this.placeCodeOf(bag),
      weighings: await weighingsOf(this.reader, bag.id),
      laboratory: await laboratoryStandingOf(this.reader, bag, gradeId),
      decisions: await decisionsOf(this.reader, 'bulk-bag', bag.id),
      assignments: await gradeAssignmentsOf(this.reader, bag.id),
      holds,
    };
  }

  private async originOf(bag: BagRow): Promise<string | null> {
    if (bag.dryerRunId !== null) return (await dryerRunOf(this.reader, bag.dryerRunId)).number;
    return bag.receiptId === null ? null : (await receiptOf(this.reader, bag.siteId, bag.receiptId)).number;
  }

  /** Over a hopper or on a vehicle the place belongs to a later room. */
  private async placeCodeOf(bag: BagRow): Promise<string | null> {
    if (bag.placeId === null) return null;
    try {
      return (await placeOf(this.reader, bag.placeId)).code;
    } catch (error) {
      if (error instanceof NotFound) return null;
      throw error;
    }
  }
}
