import { gramsIn, pourInto, takeAll, type Composition } from '../plant-physics/composition.js';
import type { RunSpan } from './act.js';
import { instantOf, type Minute } from './minutes.js';
import type { RunBook } from './run-book.js';
import type { World } from './world.js';

/** A bin of rejects as it is taken away: what is in it, and the packs beside which it was filled. */
export interface TakenBin {
  readonly sugar: Composition;
  readonly parents: readonly RunSpan[];
}

interface CountedRun {
  readonly key: string;
  readonly book: RunBook;
}

/** What leaves a line otherwise than in accepted packs: the bin of the check weigher, the floor, packs kept back. */
export class LineBins {
  private rejects: Composition = new Map();
  private rejectCount = 0;
  private rejectsFrom = 0;
  private readonly spilt: Composition = new Map();

  constructor(
    private readonly world: World,
    private readonly line: string,
  ) {}

  /** A new run: its rejects are counted from its start. */
  begin(): void {
    this.rejectsFrom = 0;
  }

  reject(pack: Composition): void {
    pourInto(this.rejects, pack);
    this.rejectCount += 1;
  }

  spill(sugar: Composition): void {
    pourInto(this.spilt, sugar);
  }

  /** Two packs are kept back at the start of a run, taken off before the counter. */
  keepBack(minute: Minute, packs: Composition): void {
    this.takeAway(minute, packs, { what: 'sample', packCount: 2, reason: 'retained', fate: 'retained' });
  }

  sweep(minute: Minute): void {
    if (gramsIn(this.spilt) < 60) return;
    const sugar = takeAll(this.spilt);
    this.takeAway(minute, sugar, { what: 'sweepings', packCount: null, reason: 'floor', fate: 'waste' });
  }

  weighRejects(minute: Minute, run: CountedRun, fate: 'waste' | 'rework'): TakenBin | null {
    const { rejects: sugar, rejectCount: packCount } = this;
    const parents = [{ run: run.key, fromCount: this.rejectsFrom, toCount: run.book.count }];
    this.rejectsFrom = run.book.count;
    this.rejects = new Map();
    this.rejectCount = 0;
    if (packCount === 0) return null;
    this.takeAway(minute, sugar, { what: 'reject', packCount, reason: 'underweight', fate });
    return { sugar, parents };
  }

  /** The demo ends: what lies in the bin and on the floor left the line, though nobody has weighed it. */
  remember(): void {
    this.world.ledger.lost(this.spilt);
    this.world.ledger.lost(this.rejects);
  }

  private takeAway(
    minute: Minute,
    sugar: Composition,
    how: {
      readonly what: 'reject' | 'sample' | 'sweepings';
      readonly packCount: number | null;
      readonly reason: 'underweight' | 'retained' | 'floor';
      readonly fate: 'rework' | 'waste' | 'retained';
    },
  ): void {
    const { world, line } = this;
    world.ledger.lost(sugar);
    const netGrams = world.weigh('P1', gramsIn(sugar));
    const removedAt = instantOf(minute);
    world.diary.note(minute, world.leadAt(minute), { kind: 'remove', line, netGrams, removedAt, ...how });
  }
}
