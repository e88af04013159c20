import { linksByBag, sourcesOfTargets } from '../hopper/hopper-links.js';
import { shifted, type Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { bagsOf } from '../drying/bulk-bags.js';
import type { SourceLine, Word } from '../tracing/thread.js';
import { rangesOfSubject, type SubjectRanges } from '../tracing/subject-ranges.js';
import { subjectOfComplaint, linkedComplaints, type ComplaintRow } from './complaints.js';

/** A bag that both complaints may hold sugar of. */
export interface SharedBag {
  readonly bagId: string;
  readonly bagNumber: string;
  /** `sure`: some of it is in both whatever the hopper did; `likely`: in both by the flow model; else possible in both. */
  readonly word: Word;
}

/** Another complaint, and what it has in common. */
export interface SimilarComplaint {
  readonly complaint: ComplaintRow;
  readonly sharedBags: readonly SharedBag[];
  readonly isSameLot: boolean;
  readonly isSameCategory: boolean;
}

/** So far back, and so many of the latest at most, other complaints are compared. Our own choices. */
const daysBack = 365;
const mostCompared = 100;

/**
 * Other complaints that share a bag, a lot or a category with this one: shared bags first, those that are sure before.
 *
 * @param sources the bags that may be in its own packs, where its thread has been read: they are not asked for again
 */
export async function similarComplaints(
  from: ReadFrom,
  complaint: ComplaintRow,
  now: Instant,
  sources: readonly Pick<SourceLine, 'bagId' | 'word'>[] | null = null,
): Promise<readonly SimilarComplaint[]> {
  const since = shifted(now, -daysBack * 86_400_000);
  const listed = await linkedComplaints(from, complaint.siteId, { since, limit: mostCompared });
  const others = listed.filter(({ id }) => id !== complaint.id);
  const known = sources === null ? null : new Map(sources.map(({ bagId, word }) => [bagId, word]));
  const all = await bagsByComplaint(from, known === null ? [complaint, ...others] : others);
  const [own, found] = known === null ? [all[0], all.slice(1)] : [known, all];
  const shared = found.map((bags) => sharedWords(own ?? new Map(), bags));
  const numbers = new Map(
    (await bagsOf(from, [...new Set(shared.flatMap((bags) => [...bags.keys()]))])).map(({ id, number }) => [
      id,
      number,
    ]),
  );
  return others
    .map((other, place) => ({
      complaint: other,
      sharedBags: [...(shared[place] ?? new Map<string, Word>())]
        .map(([bagId, word]) => {
          return { bagId, bagNumber: numbers.get(bagId) ?? '', word };
        })
        .sort((a, b) => words.indexOf(a.word) - words.indexOf(b.word)),
      isSameLot: complaint.subjectKind === 'lot' && other.subjectId === complaint.subjectId,
      isSameCategory: other.category === complaint.category,
    }))
    .filter(({ sharedBags, isSameLot, isSameCategory }) => sharedBags.length > 0 || isSameLot || isSameCategory)
    .sort((one, other) => weightOf(other) - weightOf(one));
}

function weightOf({ sharedBags, isSameLot, isSameCategory }: SimilarComplaint): number {
  const sure = sharedBags.some(({ word }) => word === 'sure');
  return (sure ? 8 : 0) + (sharedBags.length > 0 ? 4 : 0) + (isSameLot ? 2 : 0) + (isSameCategory ? 1 : 0);
}

type BagWords = ReadonlyMap<string, Word>;

/** The bags that may be in what each complaint is about; a bag complained about is its own. */
async function bagsByComplaint(from: ReadFrom, complaints: readonly ComplaintRow[]): Promise<readonly BagWords[]> {
  const targets: (SubjectRanges & { readonly ownBagId: string | null })[] = [];
  for (const complaint of complaints) {
    const subject = await subjectOfComplaint(from, complaint);
    const isBag = subject?.kind === 'bulk-bag';
    const none = { possible: [], certain: [] };
    const ranges = subject === null || isBag ? none : await rangesOfSubject(from, complaint.siteId, subject);
    targets.push({ ...ranges, ownBagId: isBag ? subject.id : null });
  }
  const links = await sourcesOfTargets(
    from,
    targets.map(({ possible, certain }) => ({ ranges: possible, certain })),
  );
  return targets.map(({ ownBagId }, place) => {
    const words = new Map<string, Word>(ownBagId === null ? [] : [[ownBagId, 'sure']]);
    for (const [bagId, { word }] of linksByBag(links[place] ?? [])) {
      if (word !== 'ruled-out' && !words.has(bagId)) words.set(bagId, word);
    }
    return words;
  });
}

function sharedWords(one: BagWords, other: BagWords): BagWords {
  const shared = new Map<string, Word>();
  for (const [bagId, word] of one) {
    const theirs = other.get(bagId);
    if (theirs !== undefined) shared.set(bagId, weaker(word, theirs));
  }
  return shared;
}

const words: readonly Word[] = ['sure', 'likely', 'possible'];

/** What holds of both is no surer than of the less sure. */
function weaker(one: Word, other: Word): Word {
  return words[Math.max(words.indexOf(one), words.indexOf(other))] ?? 'possible';
}
