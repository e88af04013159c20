import { decisionsOf, type DecisionLine } from '../../disposition/decisions.js';
import { changesAbout } from '../../disposition/changes-to-look-at.js';
import { isUsed } from '../../disposition/is-used.js';
import { bagStandingOf, type HoldRow } from '../../disposition/standings.js';
import { stateWord, type StateWord } from '../../disposition/worst-state.js';
import { findBag, type BagRow } from '../../drying/bulk-bags.js';
import { lastSequenceOf } from '../../journal/stale-page.js';
import { laboratoryStandingOf, type LaboratoryStanding } from '../../laboratory/bag-results.js';
import { propertyText } from '../../laboratory/sample-text.js';
import { namesOfHeld } from '../../pallets/held-things.js';
import { gradeOf, shiftAt } from '../../plant/plant-facts.js';
import type { GradeRow } from '../../plant/plant-rows.js';
import { gradesOfSite } from '../../plant/named-things.js';
import type { Actor } from '../../platform/actor.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { lacksOfChanges, type Lack } from './file-parts.js';
import { secondPeopleOf, type SecondPerson } from './second-people.js';

/** All that quality looks at before deciding on a bag. */
export interface BagFile {
  readonly bag: BagRow;
  readonly state: StateWord;
  readonly grade: GradeRow;
  readonly grades: readonly { readonly id: string; readonly name: string }[];
  readonly shift: { readonly productionOn: string; readonly shiftCode: string } | null;
  readonly laboratory: LaboratoryStanding;
  readonly lacks: readonly Lack[];
  readonly decisions: readonly DecisionLine[];
  readonly seconds: readonly SecondPerson[];
  readonly sequence: number;
}

/** @throws {NotFound} `bulk-bag` */
export async function readBagFile(from: ReadFrom, actor: Actor, bagId: string): Promise<BagFile> {
  const { siteId } = actor;
  const bag = await findBag(from, siteId, bagId);
  const standing = await bagStandingOf(from, bag);
  const laboratory = await laboratoryStandingOf(from, bag, standing.gradeId);
  const changes = await changesAbout(from, siteId, [bag.id]);
  return {
    bag,
    state: stateWord(standing.decision.verdict, standing.isOnHold),
    grade: await gradeOf(from, standing.gradeId),
    grades: await gradesOfSite(from, siteId),
    shift: bag.dryerId === null ? null : await shiftAt(from, siteId, bag.filledAt ?? bag.fillStartedAt),
    laboratory,
    lacks: [...lacksOfBag(bag, laboratory), ...(await lacksOfHolds(from, standing.holds)), ...lacksOfChanges(changes)],
    decisions: await decisionsOf(from, 'bulk-bag', bag.id),
    seconds: await secondPeopleOf(from, actor),
    sequence: await lastSequenceOf(from, { kind: 'bulk-bag', id: bag.id }),
  };
}

/** What of a bag itself keeps it from being released. */
export function lacksOfBag(bag: BagRow, laboratory: LaboratoryStanding): readonly Lack[] {
  const about = { href: `/quality/bags/${bag.id}`, isGrave: true };
  const lacks: Lack[] = [];
  if (bag.status === 'filling') lacks.push({ ...about, code: 'lack-bag-filling', facts: { bag: bag.number } });
  if (laboratory.outside.length > 0) {
    const outside = laboratory.outside.map(propertyText).join(', ');
    lacks.push({ ...about, code: 'lack-bag-outside', facts: { bag: bag.number, outside } });
  }
  if (laboratory.missing.length > 0) {
    const missing = laboratory.missing.map(propertyText).join(', ');
    lacks.push({ ...about, code: 'lack-bag-missing', facts: { bag: bag.number, missing } });
  }
  if (isUsed(bag)) lacks.push({ ...about, code: 'lack-bag-used', facts: { bag: bag.number }, isGrave: false });
  if (bag.isDoubtful) lacks.push({ ...about, code: 'lack-bag-doubtful', facts: { bag: bag.number }, isGrave: false });
  return lacks;
}

/** Open holds, each with what it is on. */
export async function lacksOfHolds(from: ReadFrom, holds: readonly HoldRow[]): Promise<readonly Lack[]> {
  const held = holds.map(({ scopeKind: kind, scopeId }) => ({ kind, id: scopeId }));
  const names = await namesOfHeld(from, held);
  return holds.map(({ id, number, reason, scopeKind, scopeId }) => {
    const facts = { hold: number, reason, kind: scopeKind, on: names.get(scopeId) ?? null };
    return { code: 'lack-hold', facts, href: `/quality/holds/${id}`, isGrave: true };
  });
}
