import type { HoldLine } from '../../disposition/holds.js';
import { openHoldsOfSite } from '../../disposition/holds.js';
import { openPointsOf, type PointRow } from '../../open-points/open-points.js';
import type { Instant } from '../../platform/clock.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { propertyText } from '../../laboratory/sample-text.js';
import { scopeOfRow } from '../../tracing/hold-reach.js';
import { groupText, subjectTextOf } from './hold-text.js';
import { whereaboutsOfHold, type HoldWhereabouts } from './hold-whereabouts.js';
import { riskOfBag, riskOfHold, type DeskItem, type Risk } from './order-of-risk.js';
import { bagGroupsOf, waitingBagsOf, type BagGroup, type WaitingBag } from './waiting-bags.js';

/** What the desk shows. */
export interface DeskReading {
  readonly items: readonly DeskItem[];
  /** Bags that wait for the laboratory and that nobody may tip: nothing is to be decided on them yet. */
  readonly waitingForResultsCount: number;
}

/** Following what holds reach costs; so many open holds are followed, the oldest first. */
const holdsFollowed = 12;
const mostHolds = 200;

/** Everything that waits for a decision of quality. */
export async function needsDecision(from: ReadFrom, siteId: string, now: Instant): Promise<DeskReading> {
  const waiting = await waitingBagsOf(from, siteId, now);
  const groups = await bagGroupsOf(from, siteId, waiting);
  const points = await openPointsOf(from, siteId, { state: 'open', role: 'quality-officer', limit: 200 });
  const shown = new Set(waiting.filter((bag) => bag.laboratory.outside.length > 0).map(({ bag }) => bag.id));
  return {
    items: [
      ...(await holdItems(from, siteId)),
      ...groups.flatMap(groupItems),
      ...points.filter((point) => !isShownElsewhere(point, shown)).map(pointItem),
    ],
    waitingForResultsCount: waiting.filter((bag) => riskOf(bag) === null).length,
  };
}

async function holdItems(from: ReadFrom, siteId: string): Promise<readonly DeskItem[]> {
  const items: DeskItem[] = [];
  const holds = [...(await openHoldsOfSite(from, siteId, mostHolds))].reverse();
  for (const [place, hold] of holds.entries()) {
    const where = place < holdsFollowed ? await whereaboutsOfHold(from, hold) : null;
    items.push(holdItem(hold, where, await subjectTextOf(from, scopeOfRow(hold))));
  }
  return items;
}

function holdItem(hold: HoldLine, where: HoldWhereabouts | null, subject: string): DeskItem {
  const { awayCount, onVehicleCount, palletCount } = where ?? { awayCount: 0, onVehicleCount: 0, palletCount: 0 };
  const risk = riskOfHold({ hazardSet: hold.hazardSet, awayCount, onVehicleCount });
  const counts = { away: awayCount, vehicle: onVehicleCount, pallets: palletCount };
  return {
    ...{ key: hold.id, risk, since: hold.placedAt, personId: null },
    sentence: { code: `desk-${risk}`, facts: { hold: hold.number, subject, reason: hold.reason, ...counts } },
    act: { code: hold.hazardSet === null ? 'desk-set-class' : 'desk-open-hold', href: `/quality/holds/${hold.id}` },
  };
}

function riskOf({ laboratory, isUsed, grade }: WaitingBag): Risk | null {
  return riskOfBag({ laboratory: laboratory.verdict, isUsed, isTippedAtRisk: grade.tippingRule === 'tip-at-risk' });
}

/** A bag outside is a matter of its own; the others of a group are decided on together. */
function groupItems(group: BagGroup): readonly DeskItem[] {
  const outside = group.bags.filter(({ laboratory }) => laboratory.verdict === 'outside').map(outsideItem);
  const together = (['tipped-at-risk', 'next-at-risk', 'to-release'] as const).flatMap((risk) => {
    const own = group.bags.filter((bag) => riskOf(bag) === risk);
    const [oldest] = own;
    return oldest === undefined ? [] : [bagsItem(group, risk, own)];
  });
  return [...outside, ...together];
}

function outsideItem(waiting: WaitingBag): DeskItem {
  const { bag, laboratory, grade } = waiting;
  const risk = riskOf(waiting) ?? 'result-outside';
  const outside = laboratory.outside.map(propertyText).join(', ');
  return {
    ...{ key: bag.id, risk, since: waiting.since, personId: null },
    sentence: { code: `desk-${risk}`, facts: { bag: bag.number, outside, grade: grade.name } },
    act: { code: 'desk-decide', href: `/quality/bags/${bag.id}` },
  };
}

function bagsItem(group: BagGroup, risk: Risk, bags: readonly WaitingBag[]): DeskItem {
  const missing = [...new Set(bags.flatMap(({ laboratory }) => laboratory.missing))].map(propertyText).join(', ');
  const facts = { count: bags.length, group: groupText(group), grade: group.grade.name, missing };
  return {
    ...{ key: `${risk} ${group.key}`, risk, since: bags[0]?.since ?? '', personId: null },
    sentence: { code: `desk-${risk}`, facts },
    act: {
      code: risk === 'to-release' ? 'desk-release' : 'desk-look',
      href: `/quality/bags?group=${encodeURIComponent(group.key)}`,
    },
  };
}

/** A hold or a bag that stands on the desk already needs no second line. */
function isShownElsewhere({ cause, subjectId }: PointRow, outside: ReadonlySet<string>): boolean {
  return cause === 'hold-without-class' || (cause === 'results-outside-of-bag' && outside.has(subjectId));
}

function pointItem(point: PointRow): DeskItem {
  const isOutside = point.cause === 'results-outside-of-bag';
  const isOwn = point.cause === 'already-in';
  return {
    ...{ key: point.id, since: point.raisedAt, personId: isOwn ? point.personId : null },
    risk: isOutside ? 'result-outside-used' : isOwn ? 'already-in' : 'point',
    sentence: { code: point.cause, facts: point.facts },
    act: actOfPoint(point),
  };
}

function actOfPoint({ id, cause, subjectKind, subjectId }: PointRow): DeskItem['act'] {
  if (cause === 'results-outside-of-bag') return { code: 'desk-decide', href: `/quality/bags/${subjectId}` };
  if (subjectKind === 'complaint') return { code: 'desk-look', href: `/quality/complaints/${subjectId}` };
  return { code: 'desk-answer', href: `/quality/points/${id}` };
}
