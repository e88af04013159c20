import { setImmediate } from 'node:timers/promises';
import { Injectable, type OnModuleInit } from '@nestjs/common';
import { bagsOf } from '../drying/bulk-bags.js';
import type { Asked, EntryDraft } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { HeavyReads } from '../platform/database/heavy-reads.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { changedReadings, clocksOfEntry, type CoderClocks } from './changed-readings.js';
import { compareSides } from './compare-sides.js';
import { rereadPacks } from './reread-packs.js';
import { headOf, isAsShown, markOf } from './ripple-mark.js';
import { joined, scopeOfEntry, type RippleScope } from './ripple-scope.js';
import { palletIdsOf, readBags, readLots, readPallets, type RippleSide, type SidePallet } from './ripple-side.js';
import type { Ripple } from './ripple.js';

/**
 * So many pallets are read at a time: others take their turn in between. Half of it costs a fixed part of each trial once more,
 * twice of it keeps others waiting for longer. Our own value, no source; `bench/bench-previews.ts` measures it.
 */
const palletsAtATime = 30;

type Correct = (asked: Asked) => Promise<unknown>;

interface Trying {
  readonly asked: Asked;
  readonly correct: Correct;
}

/** What is read on both sides. */
interface Touched {
  readonly scope: RippleScope;
  readonly palletIds: readonly string[];
  readonly clocks: { readonly before: CoderClocks; readonly after: CoderClocks };
  readonly mark: string;
}

/**
 * What a correction changes, before it is recorded. The command itself is run and taken back, so that what is shown is
 * what will happen, refusals and all: what its open unit sees is after, what everybody else sees is before.
 */
@Injectable()
export class CorrectionRipple implements OnModuleInit {
  constructor(
    private readonly changes: RecordChange,
    private readonly heavy: HeavyReads,
  ) {}

  /** A correction that carries the mark of its preview is refused where something that it touches was recorded since. */
  onModuleInit(): void {
    this.changes.refuseStaleBy(async (tx, entry, { actor: { siteId }, previewed }) => {
      const scope = await scopeOfEntry(tx, entry);
      const palletIds = await palletIdsOf(tx, scope);
      return isAsShown(tx, { entry, scope, palletIds, mark: previewed ?? '', siteId });
    });
  }

  /** @param correct runs the command as it is asked; it may refuse, as it would in earnest */
  async of(asked: Asked, correct: Correct): Promise<Ripple> {
    const { siteId } = asked.actor;
    const trying = { asked, correct };
    const touched = await this.touched(trying, siteId);
    const before = await this.side(touched, (work) => this.heavy.snapshot(work));
    const after = await this.side(touched, (work) => tried(trying, work));
    const named = [before, after].flatMap(({ lots, pallets }) =>
      [...lots.values(), ...pallets.values()].flatMap(({ sources }) => [...sources.keys()]),
    );
    const rows = await this.heavy.snapshot((from) => bagsOf(from, named));
    const bagNumbers = new Map(rows.map(({ id, number }) => [id, number]));
    const readings = await this.heavy.snapshot((from) => changedReadings(from, touched.clocks));
    const reread = await rereadPacks((work) => this.heavy.snapshot(work), readings);
    return { mark: touched.mark, ...compareSides({ before, after, bagNumbers }, { readings, ...reread }) };
  }

  private async touched(trying: Trying, siteId: string): Promise<Touched> {
    const after = await tried(trying, async (tx, entry) => {
      const scope = await scopeOfEntry(tx, entry);
      const [palletIds, clocks] = [await palletIdsOf(tx, scope), await clocksOfEntry(tx, entry)];
      return { entry, scope, palletIds, clocks, mark: markOf(await headOf(tx, siteId), entry) };
    });
    return this.heavy.snapshot(async (from) => {
      const scope = joined([await scopeOfEntry(from, after.entry), after.scope]);
      const palletIds = [...new Set([...(await palletIdsOf(from, scope)), ...after.palletIds])];
      const clocks = { before: await clocksOfEntry(from, after.entry), after: after.clocks };
      return { scope, palletIds, clocks, mark: after.mark };
    });
  }

  /** Read piece by piece, each in a look of its own: a long hopper period keeps nobody waiting for all of it. */
  private async side(
    { scope, palletIds }: Touched,
    look: <Seen>(work: (from: ReadFrom) => Promise<Seen>) => Promise<Seen>,
  ): Promise<RippleSide> {
    const [lots, bags] = await look(async (from) => {
      return [await readLots(from, scope.runIds), await readBags(from, scope.bagIds)] as const;
    });
    const pallets = new Map<string, SidePallet>();
    for (let start = 0; start < palletIds.length; start += palletsAtATime) {
      const own = palletIds.slice(start, start + palletsAtATime);
      for (const [id, pallet] of await look((from) => readPallets(from, own))) pallets.set(id, pallet);
      await setImmediate();
    }
    return { lots, pallets, bags };
  }
}

/** Runs the command, looks at what it did, and takes it back. */
async function tried<Seen>(
  { asked, correct }: Trying,
  look: (tx: Tx, entry: EntryDraft) => Promise<Seen>,
): Promise<Seen> {
  const seen: Seen[] = [];
  const rehearsal = async (tx: Tx, entry: EntryDraft): Promise<void> => {
    seen.push(await look(tx, entry));
  };
  await correct({ ...asked, previewed: null, rehearsal });
  const [only] = seen;
  if (seen.length === 0) throw new Error('a correction was tried without a unit');
  return only as Seen;
}
