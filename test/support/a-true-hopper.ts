import { shifted } from '../../src/platform/clock.js';
import { CountPacks } from '../../src/packing/count-packs.js';
import { RemoveSugar } from '../../src/packing/remove-sugar.js';
import { CloseReworkBin } from '../../src/hopper/close-rework-bin.js';
import { EndTip } from '../../src/hopper/end-tip.js';
import { SeeLevel } from '../../src/hopper/see-level.js';
import { TipBag } from '../../src/hopper/tip-bag.js';
import { TipReworkBin } from '../../src/hopper/tip-rework-bin.js';
import type { Plant } from './a-plant.js';
import { aProvenEmpty, aReleasedBag, aStartedRun } from './a-tip.js';
import { asking, type TestHouse } from './house.js';

/** Grams by the bag they came from. */
export type Mixture = Map<string, number>;

/** What truly happened at a hopper, for comparing with what is said of it. */
export interface HopperTruth {
  readonly bagIds: readonly string[];
  /** Each run's packs in the order of the count: what is in them. */
  readonly packsByRun: ReadonlyMap<string, readonly Mixture[]>;
  readonly inside: Mixture;
}

/** Whole numbers from 0 to `below` − 1, the same for the same seed (a linear congruential generator, parameters from memory). */
export function draws(seed: number): (below: number) => number {
  let state = seed >>> 0;
  return (below) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
}

/** A bag that drains into the hopper minute by minute. */
interface Draining {
  readonly id: string;
  left: number;
  readonly perMinute: number;
}

interface Line {
  readonly runId: string;
  readonly number: string;
  readonly packs: Mixture[];
  counted: number;
  readonly hasDevice: boolean;
}

/**
 * A hopper over two lines that truly flows somehow, run through the house's own commands: bags drain for minutes and are
 * scanned late or with a stated time, a device counts one line and people the other, packs are rejected, opened packs
 * go back, levels are seen, the hopper is run down and proven empty. Every record is off by no more than it may be.
 */
export class TrueHopper {
  private readonly draw: (below: number) => number;
  private readonly inside: { bagId: string; grams: number }[] = [];
  private readonly draining: Draining[] = [];
  private readonly bagIds: string[] = [];
  private readonly lines: Line[] = [];
  private readonly waiting: { minute: number; act: () => Promise<void> }[] = [];
  private minute = 0;
  private emptyAt = '';

  constructor(
    private readonly house: TestHouse,
    private readonly plant: Plant,
    seed: number,
  ) {
    this.draw = draws(seed);
  }

  async live(minutes: number): Promise<HopperTruth> {
    for (const [place, lineId] of this.plant.lineIds.entries()) {
      const { id, number } = await aStartedRun(this.house, this.plant, { lineId });
      this.lines.push({ runId: id, number, packs: [], counted: 0, hasDevice: place === 0 });
    }
    const emptyAt = 20 + this.draw(minutes - 30);
    for (let end = minutes; this.minute < end;) {
      await this.nextMinute({ mayTip: this.minute < emptyAt - 12 || this.minute > emptyAt });
      if (this.minute === emptyAt) await this.runEmpty();
    }
    await this.settleAll();
    for (const line of this.lines) await this.count(line);
    return {
      bagIds: this.bagIds,
      packsByRun: new Map(this.lines.map(({ runId, packs }) => [runId, packs])),
      inside: this.mixtureInside(),
    };
  }

  private async nextMinute({ mayTip }: { readonly mayTip: boolean }): Promise<void> {
    this.minute += 1;
    this.house.clock.pass(1);
    for (const bag of this.draining) this.pour(bag);
    for (const line of this.lines) this.pack(line, this.draw(4));
    if (mayTip && this.level() < 1_500_000 && this.draw(6) === 0) await this.hang();
    for (const line of this.lines) if (line.hasDevice || this.draw(7) === 0) await this.count(line);
    if (this.draw(25) === 0) await this.seeLevel();
    if (mayTip && this.draw(20) === 0) await this.reject();
    if (mayTip && this.draw(30) === 0) await this.rework();
    for (const due of this.waiting.splice(0)) {
      if (due.minute > this.minute) this.waiting.push(due);
      else await due.act();
    }
  }

  /** No more bags, packs until nothing comes any more, then two people look in. */
  private async runEmpty(): Promise<void> {
    await this.settleAll();
    for (let stalled = 0; stalled < 3;) {
      this.minute += 1;
      this.house.clock.pass(1);
      const before = this.level();
      for (const line of this.lines) this.pack(line, 60);
      stalled = this.level() === before ? stalled + 1 : 0;
      await this.count(this.lines[0] ?? fail());
    }
    const residueGrams = Math.round(this.level() * (0.6 + this.draw(60) / 100));
    const counts = this.lines.map(({ number, packs }) => ({ run: number, packCount: packs.length }));
    await aProvenEmpty(this.house, this.plant, { residueGrams, counts });
    for (const line of this.lines) line.counted = line.packs.length;
    this.emptyAt = this.house.clock.now();
  }

  /** A bag is opened now; who scans it does so soon, or enters it much later with a time from memory. */
  private async hang(): Promise<void> {
    const grams = 60_000 + this.draw(200_000);
    const recorded = grams + this.draw(2001) - 1000;
    const { id } = await aReleasedBag(this.house, this.plant, { netGrams: recorded });
    this.bagIds.push(id);
    this.draining.push({ id, left: grams, perMinute: Math.ceil(grams / (1 + this.draw(6))) });
    const openedAt = this.house.clock.now();
    const isLate = this.draw(3) === 0;
    const minute = this.minute + (isLate ? 16 + this.draw(10) : this.draw(5));
    // Off by up to fourteen minutes, either way; everybody knows whether it was before the hopper was proven empty or after.
    const stated = shifted(openedAt, (this.draw(29) - 14) * 60_000);
    const known = stated > this.emptyAt ? stated : openedAt;
    this.waiting.push({ minute, act: () => this.tip(id, isLate ? known : null) });
  }

  private async tip(bag: string, openedAt: string | null): Promise<void> {
    const { hopperId, actor } = this.plant;
    const form = { bag, hopperId, openedAt, reason: 'entered from memory' };
    const { id } = await this.house.get(TipBag).execute(asking(actor), form);
    const end = async (): Promise<void> => {
      if (this.draining.some((one) => one.id === bag && one.left > 0)) {
        this.waiting.push({ minute: this.minute + 1, act: end });
      } else {
        await this.house.get(EndTip).execute(asking(actor), id, {});
      }
    };
    await end();
  }

  private pour(bag: Draining): void {
    const grams = Math.min(bag.left, bag.perMinute);
    bag.left -= grams;
    if (grams > 0) this.inside.push({ bagId: bag.id, grams });
  }

  private pack(line: Line, count: number): void {
    for (let made = 0; made < count && this.level() > 2_030; made += 1)
      line.packs.push(this.take(1_991 + this.draw(28)));
  }

  /** Grams from anywhere inside: the oldest, the newest, or in between. */
  private take(grams: number): Mixture {
    const taken: Mixture = new Map();
    for (let left = grams; left > 0;) {
      const place = [0, this.inside.length - 1, this.draw(this.inside.length)][this.draw(3)] ?? 0;
      const layer = this.inside[place];
      if (layer === undefined) throw new Error('more is taken than is inside');
      const part = Math.min(left, layer.grams, 1 + this.draw(900));
      layer.grams -= part;
      left -= part;
      taken.set(layer.bagId, (taken.get(layer.bagId) ?? 0) + part);
      if (layer.grams === 0) this.inside.splice(place, 1);
    }
    return taken;
  }

  private async count(line: Line): Promise<void> {
    if (line.packs.length < line.counted) return;
    line.counted = line.packs.length;
    const occasion = line.hasDevice ? 'minute' : 'other';
    const form = { packCount: line.packs.length, occasion } as const;
    await this.house.get(CountPacks).execute(asking(this.plant.actor), line.runId, form);
  }

  private async seeLevel(): Promise<void> {
    const level = this.level();
    const form = { lowerGrams: Math.max(0, level - this.draw(60_000)), upperGrams: level + this.draw(60_000) };
    const { hopperId, actor } = this.plant;
    await this.house.get(SeeLevel).execute(asking(actor), hopperId, { how: 'probe', ...form });
  }

  private async reject(): Promise<void> {
    const packCount = 1 + this.draw(6);
    if (this.level() < packCount * 2_030) return;
    for (let made = 0; made < packCount; made += 1) this.take(1_991 + this.draw(28));
    const form = { kind: 'reject', packCount, removalReason: 'seal', fate: 'waste' } as const;
    await this.house.get(RemoveSugar).execute(asking(this.plant.actor), { ...form, lineId: this.plant.lineIds[0] });
  }

  /** The last few packs of a line are opened, weighed in a bin, and go back. */
  private async rework(): Promise<void> {
    const line = this.lines[this.draw(2)] ?? fail();
    const packCount = Math.min(line.counted, 2 + this.draw(10));
    if (packCount < 2) return;
    const fromCount = line.counted - packCount;
    const packs = line.packs.slice(fromCount, line.counted);
    const grams = packs.reduce((sum, pack) => sum + [...pack.values()].reduce((all, part) => all + part, 0), 0);
    const { actor, hopperId, scaleId } = this.plant;
    const bin = await this.house.get(CloseReworkBin).execute(asking(actor), {
      ...{ content: 'opened-packs', netGrams: grams + this.draw(1001) - 500, scaleId },
      parents: [{ run: line.number, fromCount, toCount: line.counted }],
    });
    await this.house.get(TipReworkBin).execute(asking(actor), { bin: bin.number, hopperId });
    for (const pack of packs) for (const [bagId, part] of pack) this.inside.push({ bagId, grams: part });
  }

  private async settleAll(): Promise<void> {
    while (this.waiting.length > 0 || this.draining.some(({ left }) => left > 0))
      await this.nextMinute({ mayTip: false });
  }

  private level(): number {
    return this.inside.reduce((sum, { grams }) => sum + grams, 0);
  }

  private mixtureInside(): Mixture {
    const mixture: Mixture = new Map();
    for (const { bagId, grams } of this.inside) mixture.set(bagId, (mixture.get(bagId) ?? 0) + grams);
    return mixture;
  }
}

function fail(): never {
  throw new Error('no such line');
}
