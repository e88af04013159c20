import { Controller, Get, Inject } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import { changesToLookAt } from '../../disposition/changes-to-look-at.js';
import { decisionsOn, openHolds } from '../../disposition/standings.js';
import { stateWord } from '../../disposition/worst-state.js';
import { latestLots } from '../../packing/run-lists.js';
import { namesOf } from '../../people/people.js';
import { May } from '../../platform/actor.js';
import { Clock, shifted } from '../../platform/clock.js';
import { HeavyReads } from '../../platform/database/heavy-reads.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { Looking, type Viewer } from '../../platform/web/request.js';
import { openRecalls } from '../../recalls/recalls.js';
import { deskPage, type LotLine } from './desk.page.js';
import { needsDecision } from './needs-decision.js';
import { inOrderOfRisk } from './order-of-risk.js';

/** More of one risk than this nobody looks at in one go. */
const mostOfEach = 10;
const changeDays = 7;
const lotsShown = 12;

@ApiExcludeController()
@Controller('quality')
export class QualityDeskController {
  constructor(
    private readonly heavy: HeavyReads,
    private readonly clock: Clock,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  @Get()
  @May('read')
  async desk(@Looking() viewer: Viewer): Promise<VNode> {
    const { siteId } = viewer.actor;
    const now = this.clock.now();
    const reading = await this.heavy.snapshot((from) => needsDecision(from, siteId, now));
    const fromAt = shifted(now, -changeDays * 86_400_000);
    const changes = await changesToLookAt(this.reader, siteId, { fromAt, isReviewed: false });
    const groups = inOrderOfRisk(reading.items, mostOfEach);
    const names = await namesOf(
      this.reader,
      groups.flatMap(({ items }) => items.flatMap(({ personId }) => personId ?? [])),
    );
    const { waitingForResultsCount } = reading;
    const lots = await lotLines(this.reader, siteId);
    const recallCount = (await openRecalls(this.reader, siteId)).length;
    return deskPage({ viewer, groups, waitingForResultsCount, changeCount: changes.length, recallCount, lots, names });
  }
}

/** Lots packed lately, by what quality said of them and by holds on them alone: their files know the rest. */
async function lotLines(from: ReadFrom, siteId: string): Promise<readonly LotLine[]> {
  const lots = await latestLots(from, siteId, lotsShown);
  const ids = lots.map(({ id }) => id);
  const decisions = await decisionsOn(from, 'lot', ids);
  const holds = await openHolds(
    from,
    ids.map((id) => ({ kind: 'lot', id })),
  );
  return lots.map((lot) => {
    const verdict = decisions.get(lot.id)?.verdict ?? 'waiting';
    const isOnHold = holds.some(({ scopeId }) => scopeId === lot.id);
    const isSilent = decisions.get(lot.id)?.decidedAt === null && !isOnHold;
    return { ...lot, state: isSilent ? null : stateWord(verdict, isOnHold) };
  });
}
