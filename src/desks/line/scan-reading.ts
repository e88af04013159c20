import { readBagNumber } from '../../core/identifiers/bag-number.js';
import { recordedBy } from '../../journal/recorded-by.js';
import { gradeOf } from '../../plant/plant-facts.js';
import { bagStandingOf } from '../../disposition/standings.js';
import { bagOf, type BagRow } from '../../drying/bulk-bags.js';
import { brokenByTipping } from '../../hopper/tipping-rules.js';
import { tipsOfBag, type TipRow } from '../../hopper/tips.js';
import { namesOf } from '../../people/people.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import type { SentenceFacts } from '../../platform/refusal.js';
import type { MarkedState } from '../../platform/web/state-mark.js';
import { findSubjects } from '../find-subjects.js';
import { pageOfPaperCode } from '../paper-forms/paper-forms.js';
import type { LineNow } from './line-rows.js';
import { commandIn, type CommandWord } from './line-commands.js';
import { badgeNameOf } from './scanned-badge.js';

/** A bag at the tip: what it is, how it stands, and what keeps it from being tipped. */
export interface BagAtTip {
  readonly kind: 'bag';
  readonly bag: BagRow;
  readonly grade: string;
  readonly state: MarkedState;
  /** Why it may not be tipped: the sentence and its facts; null: it may. */
  readonly refusal: { readonly code: string; readonly facts: SentenceFacts } | null;
  /** The tip that it hangs at; null: it does not hang. */
  readonly hanging: TipRow | null;
}

/** What a scan at the line was. */
export type ScanReading =
  | BagAtTip
  | { readonly kind: 'tipped'; readonly bag: BagRow; readonly at: string | null; readonly by: string | null }
  | { readonly kind: 'pallet'; readonly id: string; readonly name: string }
  | { readonly kind: 'film'; readonly name: string }
  | { readonly kind: 'other'; readonly what: string; readonly name: string; readonly href: string }
  | { readonly kind: 'place'; readonly name: string }
  | { readonly kind: 'badge'; readonly name: string }
  | { readonly kind: 'command'; readonly word: CommandWord }
  | { readonly kind: 'wrong-check' | 'unknown'; readonly text: string };

/** What was scanned or typed at a line: every code says what it is, whatever page it was scanned on. */
export async function readScan(
  from: ReadFrom,
  siteId: string,
  asked: { text: string; at: LineNow },
): Promise<ScanReading> {
  const { at } = asked;
  const text = asked.text.trim();
  const word = commandIn(text);
  if (word !== null) return { kind: 'command', word };
  const sheet = await pageOfPaperCode(from, siteId, { text, now: at.now });
  if (sheet !== null) return { kind: 'other', what: 'paper-form', name: text.slice(0, 40), href: sheet };
  const [found] = await findSubjects(from, siteId, { code: text, localTime: null, now: at.now });
  if (found === undefined) return readOther(from, siteId, text);
  const { kind, id, name } = found.subject;
  switch (kind) {
    case 'bulk-bag':
      return readBag(from, await bagOf(from, id), at);
    case 'pallet':
      return { kind: 'pallet', id, name };
    case 'film-lot':
      return { kind: 'film', name };
    default:
      return { kind: 'other', what: kind, name, href: `/thread?code=${encodeURIComponent(text)}` };
  }
}

async function readOther(from: ReadFrom, siteId: string, text: string): Promise<ScanReading> {
  const [place] = await from.sql<{ code: string }>`
    SELECT "code" FROM "store_place" WHERE "site_id" = ${siteId} AND UPPER("code") = ${text.toUpperCase()}`;
  if (place !== undefined) return { kind: 'place', name: place.code };
  const person = await badgeNameOf(from, siteId, text);
  if (person !== null) return { kind: 'badge', name: person };
  const isLikeBag = /^B?[\dX]{7,10}$/i.test(text.replaceAll(/[\s\-'’.]/g, '')) && readBagNumber(text) === null;
  return { kind: isLikeBag ? 'wrong-check' : 'unknown', text: text.slice(0, 40) };
}

async function readBag(from: ReadFrom, bag: BagRow, { hopper, now }: LineNow): Promise<ScanReading> {
  const tip = (await tipsOfBag(from, bag.id)).at(-1) ?? null;
  if (bag.status === 'empty') return { kind: 'tipped', bag, at: tip?.openedAt ?? null, by: await whoTipped(from, tip) };
  const standing = await bagStandingOf(from, bag);
  const grade = (await gradeOf(from, standing.gradeId)).name;
  const state: MarkedState = standing.isOnHold ? 'on-hold' : standing.decision.verdict;
  const hanging = bag.status === 'hanging' ? tip : null;
  const refusal = hanging === null ? await refusalOf(from, bag, { hopper, now }) : null;
  return { kind: 'bag', bag, grade, state, refusal, hanging };
}

async function refusalOf(
  from: ReadFrom,
  bag: BagRow,
  { hopper, now }: Pick<LineNow, 'hopper' | 'now'>,
): Promise<BagAtTip['refusal']> {
  if (bag.status === 'filling') return { code: 'bag-not-closed', facts: { bag: bag.number } };
  if (bag.status === 'loaded' || bag.status === 'dispatched') return { code: 'bag-loaded', facts: { bag: bag.number } };
  if (hopper === null) return { code: 'line-tips-nowhere', facts: {} };
  const [broken] = await brokenByTipping(from, bag, { hopper, at: now });
  return broken ?? null;
}

/** Who recorded a tip, by the journal. */
async function whoTipped(from: ReadFrom, tip: TipRow | null): Promise<string | null> {
  if (tip === null) return null;
  const personId = await recordedBy(from, { kind: 'tip', id: tip.id });
  return personId === null ? null : ((await namesOf(from, [personId])).get(personId) ?? null);
}
