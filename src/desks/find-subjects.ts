import { complaintPrefix, findComplaint, subjectOfComplaint } from '../complaints/complaints.js';
import { elementValue } from '../core/identifiers/elements.js';
import { impossibleTimeIn } from '../core/identifiers/normalise-code.js';
import { recognise, type Candidate, type HouseCodes } from '../core/identifiers/recognise.js';
import { addDays } from '../core/shift-calendar/calendar-day.js';
import { notePrefix } from '../dispatch/deliveries.js';
import { shiftAt } from '../plant/plant-facts.js';
import type { Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { findRecall, recallPrefixes } from '../recalls/recalls.js';
import {
  choiceKey,
  fit,
  fitsOfSwaps,
  type ComplaintFinding,
  type Finding,
  type Fit,
  type RecallFinding,
} from './finding.js';
import { LotFinder } from './find-lots.js';
import { orNone, UnitFinder } from './find-units.js';

/** How far back a code with a one-figure year is looked for. */
const yearsBack = 12;

/** What is looked for. */
export interface CodeAsked {
  readonly code: string;
  /** The time of day on the pack, where it was given apart from the code. */
  readonly localTime: string | null;
  readonly now: Instant;
  /** Somebody else read it, by eye: what looks alike is shown too where something fits as typed. */
  readonly isReadByEye?: boolean;
}

/** Whatever carries a code. */
export interface Findings {
  readonly findings: readonly Finding[];
  readonly complaints: readonly ComplaintFinding[];
  readonly recalls: readonly RecallFinding[];
  /** What is wrong with the code itself, where nothing carries it. */
  readonly fault: Fit | null;
}

/**
 * What a scanned or typed code means here: it asks each room's finder, most likely kind first. Several findings are
 * for a person to choose from. A complaint is what it is about.
 */
export async function findSubjects(from: ReadFrom, siteId: string, asked: CodeAsked): Promise<readonly Finding[]> {
  const { findings, complaints } = await findAnything(from, siteId, asked);
  const linked: Finding[] = [];
  for (const { complaint, fits } of complaints) {
    const subject = await subjectOfComplaint(from, complaint);
    if (subject !== null) linked.push({ subject, about: complaint.number, fits, tier: 'as-typed', isDoubtful: false });
  }
  return distinct([...findings, ...linked]);
}

/** The same, with complaints and recalls as such. */
export async function findAnything(from: ReadFrom, siteId: string, asked: CodeAsked): Promise<Findings> {
  const candidates = recognise(asked.code, await houseCodes(from, siteId, asked.now));
  const lots = new LotFinder(from, siteId, asked.localTime);
  const units = new UnitFinder(from, siteId);
  const complaints: ComplaintFinding[] = [];
  const recalls: RecallFinding[] = [];
  const whole: Finding[] = [];
  for (const candidate of candidates) {
    const found = await byWholeCode(candidate, lots, units);
    whole.push(...found);
    if (found.length > 0 && saysItself(candidate)) break;
    if (candidate.kind === 'complaint') complaints.push(...(await complaintsOf(from, siteId, candidate)));
    if (candidate.kind === 'recall') recalls.push(...(await recallsOf(from, siteId, candidate)));
  }
  const best = asked.isReadByEye === true ? whole : bestOf(whole);
  if (best.length + complaints.length + recalls.length > 0) {
    return { findings: distinct(best), complaints, recalls, fault: null };
  }
  const parts: Finding[] = [];
  for (const candidate of candidates) parts.push(...(await byPart(candidate, lots)));
  const noTime = impossibleTimeIn(asked.code);
  const fault = parts.length > 0 || noTime === null ? null : fit('code-time-impossible', { at: noTime });
  return { findings: distinct(parts), complaints, recalls, fault };
}

async function houseCodes(from: ReadFrom, siteId: string, now: Instant): Promise<HouseCodes> {
  const patterns = await from.sql<{ formatId: string; pattern: string }>`
    SELECT "id" AS "formatId", "code_pattern" AS "pattern" FROM "pack_format" WHERE "site_id" = ${siteId} ORDER BY "id"`;
  const { productionOn } = await shiftAt(from, siteId, now);
  const currentYear = Number(productionOn.slice(0, 4));
  const window = { earliestOn: `${currentYear - yearsBack}-01-01`, latestOn: addDays(productionOn, 1) };
  const prefixes = { deliveryPrefix: notePrefix, complaintPrefix, recallPrefixes: Object.values(recallPrefixes) };
  return { currentYear, ...prefixes, patterns, window };
}

function byWholeCode(candidate: Candidate, lots: LotFinder, units: UnitFinder): Promise<readonly Finding[]> {
  switch (candidate.kind) {
    case 'logistic-unit':
      return units.bySscc(candidate.sscc, candidate.swaps ?? []);
    case 'trade-item':
      return candidate.lot === null ? Promise.resolve([]) : lots.byItem(candidate.gtin14, candidate.lot);
    case 'delivery':
      return units.byNote(candidate.deliveryNumber, candidate.swaps);
    case 'bag':
      return units.byBagNumber(candidate.bagNumber, candidate.swaps);
    case 'pack-code':
      return lots.byWholeCode(candidate);
    case 'text':
      return units.byText(candidate.text);
    case 'other-elements': {
      const order = elementValue(candidate.elements, '400');
      return order === null ? Promise.resolve([]) : units.byOrder(order);
    }
    case 'complaint':
    case 'recall':
      return Promise.resolve([]);
  }
}

function byPart(candidate: Candidate, lots: LotFinder): Promise<readonly Finding[]> {
  if (candidate.kind === 'pack-code') return lots.byPartOfCode(candidate);
  if (candidate.kind === 'trade-item' && candidate.lot === null) return lots.latestOfItem(candidate.gtin14);
  return Promise.resolve([]);
}

/** A number that has a check digit of its own and was read as typed is nothing else. */
function saysItself(candidate: Candidate): boolean {
  if (candidate.kind === 'logistic-unit') return (candidate.swaps ?? []).length === 0;
  return candidate.kind === 'bag' && candidate.swaps.length === 0;
}

async function complaintsOf(
  from: ReadFrom,
  siteId: string,
  { complaintNumber, swaps }: Extract<Candidate, { kind: 'complaint' }>,
): Promise<readonly ComplaintFinding[]> {
  const fits = [fit('fits-complaint'), ...fitsOfSwaps(swaps)];
  return orNone(async () => ({ complaint: await findComplaint(from, siteId, complaintNumber), fits }));
}

async function recallsOf(
  from: ReadFrom,
  siteId: string,
  { recallNumber, swaps }: Extract<Candidate, { kind: 'recall' }>,
): Promise<readonly RecallFinding[]> {
  const fits = [fit('fits-recall'), ...fitsOfSwaps(swaps)];
  return orNone(async () => ({ recall: await findRecall(from, siteId, recallNumber), fits }));
}

/** As typed, else by look-alikes. */
function bestOf(findings: readonly Finding[]): readonly Finding[] {
  const asTyped = findings.filter(({ tier }) => tier === 'as-typed');
  return asTyped.length > 0 ? asTyped : findings;
}

function distinct(findings: readonly Finding[]): readonly Finding[] {
  const first = new Map<string, Finding>();
  for (const finding of findings) {
    const key = `${finding.subject.kind} ${choiceKey(finding)}`;
    if (!first.has(key)) first.set(key, finding);
  }
  return [...first.values()];
}
