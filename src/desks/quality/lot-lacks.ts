import type { BagRow } from '../../drying/bulk-bags.js';
import { laboratoryStandingsOf, type LaboratoryStanding } from '../../laboratory/bag-results.js';
import { propertyText } from '../../laboratory/sample-text.js';
import { bagStandingsOf } from '../../disposition/standings.js';
import { checksOfLineSince } from '../../line-checks/line-checks.js';
import { hopperOf, hopperOfLine } from '../../plant/plant-facts.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { groupBy } from '../../platform/group-by.js';
import { accountsWithin } from '../../reconciliation/accounts.js';
import type { Thread } from '../../tracing/thread.js';
import type { Lack } from './file-parts.js';
import type { LotRun } from './lot-run.js';

/** What is known of a lot when its lacks are looked for. */
interface KnownLot {
  readonly runs: readonly LotRun[];
  readonly thread: Thread;
  readonly bags: readonly BagRow[];
}

/** What is missing before a decision on a lot: results and decisions of its bags, packing, weights, the account. */
export async function lacksOfLot(from: ReadFrom, known: KnownLot): Promise<readonly Lack[]> {
  return [
    ...(await lacksOfBags(from, known)),
    ...known.runs.flatMap(lacksOfRun),
    ...(await lacksOfChecks(from, known)),
    ...(await lacksOfAccounts(from, known)),
  ];
}

/** Bags of which nothing is missing are not named; what many lack alike is said once, with their count. */
async function lacksOfBags(from: ReadFrom, { thread, bags }: KnownLot): Promise<readonly Lack[]> {
  if (thread.sources.length === 0) return [{ code: 'lack-no-bag', facts: {}, href: null, isGrave: true }];
  const standings = await bagStandingsOf(
    from,
    bags.map(({ id }) => id),
  );
  const laboratory = await laboratoryStandingsOf(
    from,
    bags.map((bag) => ({ bag, gradeId: standings.get(bag.id)?.gradeId ?? bag.intendedGradeId })),
  );
  const words = new Map(thread.sources.map(({ bagId, word }) => [bagId, word === 'possible' ? 'possible' : 'likely']));
  const said = bags.flatMap((bag) => {
    const verdict = standings.get(bag.id)?.decision.verdict ?? 'waiting';
    const code = codeOf(verdict, standings.get(bag.id)?.isOnHold ?? false, laboratory.get(bag.id));
    return code === null ? [] : [{ bag, code, word: words.get(bag.id) ?? 'possible' }];
  });
  return [...groupBy(said, ({ code, word }) => `${code} ${word}`).values()].map((own) => bagsLack(own, laboratory));
}

/** A bag that quality decided on stands by that; one that waits is told by its results. */
function codeOf(verdict: string, isOnHold: boolean, laboratory: LaboratoryStanding | undefined): string | null {
  if (verdict === 'rejected') return 'lack-bags-rejected';
  if (isOnHold) return 'lack-bags-held';
  if (laboratory?.verdict === 'outside' && verdict !== 'concession') return 'lack-bags-outside';
  if (verdict !== 'waiting') return null;
  return laboratory?.verdict === 'incomplete' ? 'lack-bags-missing' : 'lack-bags-undecided';
}

function bagsLack(
  own: readonly { readonly bag: BagRow; readonly code: string; readonly word: string }[],
  laboratory: ReadonlyMap<string, LaboratoryStanding>,
): Lack {
  const [first] = own;
  const named = own.slice(0, 5).map(({ bag }) => bag.number);
  const bags = own.length > named.length ? `${named.join(', ')} …` : named.join(', ');
  const properties = own.flatMap(({ bag }) => {
    const standing = laboratory.get(bag.id);
    return first?.code === 'lack-bags-outside' ? (standing?.outside ?? []) : (standing?.missing ?? []);
  });
  const facts = { count: own.length, bags, properties: [...new Set(properties)].map(propertyText).join(', ') };
  return {
    code: `${first?.code ?? ''}-${first?.word ?? 'possible'}`,
    facts,
    href: own.length === 1 ? `/quality/bags/${first?.bag.id ?? ''}` : null,
    isGrave: true,
  };
}

function lacksOfRun({ run, range, mean }: LotRun): readonly Lack[] {
  const href = `/runs/${run.id}`;
  const lacks: Lack[] = [];
  if (run.closedAt === null && range.toCount === null) {
    lacks.push({ code: 'lack-run-open', facts: { run: run.number }, href, isGrave: true });
  }
  if (!range.isAsIntended) {
    const facts = { run: run.number, intended: range.intendedCode, printed: range.code };
    lacks.push({ code: 'lack-code', facts, href, isGrave: false });
  }
  if (mean === null || mean.basis === 'assumed') {
    lacks.push({ code: 'lack-not-weighed', facts: { run: run.number }, href, isGrave: false });
  }
  return lacks;
}

/** Checks of the lines that failed while the lot was packed. */
async function lacksOfChecks(from: ReadFrom, { runs, thread }: KnownLot): Promise<readonly Lack[]> {
  const lacks: Lack[] = [];
  for (const { run } of runs) {
    const when = thread.packed.find((part) => part.runId === run.id)?.when ?? null;
    if (when === null) continue;
    const checks = await checksOfLineSince(from, run.lineId, when.fromAt);
    for (const { passed, occurredAt, station, lineCode } of checks) {
      if (passed || occurredAt > when.untilAt) continue;
      const facts = { kind: station, line: lineCode, at: occurredAt };
      lacks.push({ code: 'lack-check-failed', facts, href: null, isGrave: true });
    }
  }
  return lacks;
}

/** The account of the hopper over the time in which the lot was packed. */
async function lacksOfAccounts(from: ReadFrom, { runs, thread }: KnownLot): Promise<readonly Lack[]> {
  const lacks: Lack[] = [];
  for (const { run } of runs) {
    const when = thread.packed.find((part) => part.runId === run.id)?.when ?? null;
    const hopperId = await hopperOfLine(from, run.lineId, run.startedAt);
    if (when === null || hopperId === null) continue;
    const accounts = await accountsWithin(from, { hopperId, fromAt: when.fromAt, untilAt: when.untilAt });
    const last = accounts.at(-1);
    if (last === undefined || last.untilAt < when.untilAt) {
      const facts = { hopper: (await hopperOf(from, hopperId)).code, run: run.number };
      lacks.push({ code: 'lack-account', facts, href: '/accounts', isGrave: false });
    }
    for (const account of accounts.filter(({ verdict }) => verdict !== 'closes')) {
      const facts = { account: account.number };
      lacks.push({ code: `lack-account-${account.verdict}`, facts, href: `/accounts/${account.id}`, isGrave: false });
    }
  }
  return lacks.filter(
    (lack, place) => lacks.findIndex((one) => one.href === lack.href && one.code === lack.code) === place,
  );
}
