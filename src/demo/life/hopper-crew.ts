import { gramsIn, pourInto, type Composition } from '../plant-physics/composition.js';
import { HopperCells, usualHopper } from '../plant-physics/hopper-cells.js';
import type { Random } from '../plant-physics/random.js';
import type { Campaign, HopperPlan } from './demo-plan.js';
import type { TakenBin } from './line-bins.js';
import { LineCrew } from './line-crew.js';
import { instantOf, shiftAt, type Minute } from './minutes.js';
import { nominalGrams } from './pack-formats.js';
import { TipScript } from './tip-script.js';
import type { World } from './world.js';

type Phase = 'empty' | 'filled' | 'running' | 'clearing';

interface Bin {
  readonly key: string;
  readonly sugar: Composition;
  readonly tipAt: Minute;
}

/** A hopper, the lines that it feeds, and who fills it. */
export class HopperCrew {
  private readonly cells = new HopperCells(usualHopper);
  private readonly lines: readonly LineCrew[];
  private readonly tips: TipScript;
  private readonly random: Random;
  private readonly campaigns: Campaign[];
  private phase: Phase = 'empty';
  private phaseEndsAt: Minute = 0;
  private accountFrom: Minute;
  private bin: Bin | null = null;
  private binCount = 0;

  constructor(
    private readonly world: World,
    private readonly plan: HopperPlan,
  ) {
    this.lines = world.plan.lines
      .filter(({ hopper }) => hopper === plan.code)
      .map((line) => new LineCrew(world, line, this.cells));
    this.tips = new TipScript(world, plan, this.cells);
    this.random = world.random(`hopper ${plan.code}`);
    this.campaigns = world.plan.campaigns.filter(({ hopper }) => hopper === plan.code);
    this.accountFrom = world.plan.from + 6;
    this.noteEmpty(this.accountFrom, { residueGrams: 0, residueUpperGrams: 0 });
  }

  /** What happens from this minute to the next. */
  step(minute: Minute): void {
    const [campaign] = this.campaigns;
    if (campaign !== undefined) this.workOn(minute, campaign);
    this.tips.step(minute);
    for (const line of this.lines) line.step(minute);
  }

  /** Closes nothing: what is inside when the demo ends is inside. */
  remember(minute: Minute): void {
    for (const line of this.lines) line.remember(minute);
    if (this.bin !== null) pourInto(this.world.ledger.inside, this.bin.sugar);
    pourInto(this.world.ledger.inside, this.tips.rest());
    pourInto(this.world.ledger.inside, this.cells.scrapeOut());
  }

  private workOn(minute: Minute, campaign: Campaign): void {
    if (this.phase === 'empty' && minute >= campaign.from) this.begin(minute, campaign);
    else if (this.phase === 'filled' && minute >= this.phaseEndsAt) this.startRuns(campaign, minute);
    else if (this.phase === 'running') this.run(minute, campaign);
    else if (this.phase === 'clearing' && minute >= this.phaseEndsAt) this.proveEmpty(minute);
  }

  private begin(minute: Minute, campaign: Campaign): void {
    if (!this.tip(minute, campaign)) return;
    this.phase = 'filled';
    this.phaseEndsAt = minute + 5;
  }

  private startRuns(campaign: Campaign, minute: Minute): void {
    for (const line of this.lines) line.startRun(minute, campaign.grade);
    this.phase = 'running';
  }

  private run(minute: Minute, campaign: Campaign): void {
    if (shiftAt(minute).until === minute + 1) this.handOver(minute, campaign);
    if (this.bin !== null && minute >= this.bin.tipAt && this.tips.mayBegin(minute)) this.tipBin(minute, this.bin);
    else if (this.wantsBag(minute, campaign)) this.tip(minute, campaign);
    const hasEnded = minute > campaign.until - 60 && !this.tips.isBusy && this.lines.every((line) => line.hasStarved);
    if (hasEnded && !this.mayStillTip(minute, campaign)) this.closeRuns(minute);
  }

  private wantsBag(minute: Minute, campaign: Campaign): boolean {
    const untilHandover = shiftAt(minute).until - minute;
    const usual = this.plan.tipBelowGrams * this.random.between(0.9, 1.15);
    // No bag hangs while the level is looked at: the last one before a handover is tipped early.
    const below = untilHandover < 22 ? usual + 12 * this.gramsPerMinute(campaign) : usual;
    const isFree = this.tips.mayBegin(minute) && untilHandover > this.plan.drainMinutes + 4;
    return isFree && this.cells.levelGrams < below && this.mayStillTip(minute, campaign);
  }

  /** The last bags are left where they are, so that the hopper is empty in time. */
  private mayStillTip(minute: Minute, campaign: Campaign): boolean {
    return minute + (this.cells.levelGrams + 1_000_000) / (this.gramsPerMinute(campaign) * 0.88) < campaign.until;
  }

  private gramsPerMinute({ grade }: Campaign): number {
    return this.world.plan.lines
      .filter(({ hopper }) => hopper === this.plan.code)
      .map(({ packs }) => packs[grade])
      .reduce((sum, packs) => sum + (packs === undefined ? 0 : packs.perMinute * nominalGrams[packs.format]), 0);
  }

  private tip(minute: Minute, campaign: Campaign): boolean {
    const bags = this.world.store.tippable(campaign.grade, minute);
    if (bags.length === 0) return false;
    for (const line of this.lines) line.count(minute);
    return this.tips.tipNext(minute, bags, campaign.until);
  }

  private handOver(minute: Minute, campaign: Campaign): void {
    const isRework = shiftAt(minute).code === 'A' && this.bin === null && campaign.until > minute + 200;
    const taken = this.lines.flatMap((line) => line.handOver(minute, isRework ? 'rework' : 'waste') ?? []);
    const lead = this.world.leadAt(minute);
    const middle = this.cells.levelGrams + this.random.normal(0, 8000);
    const lowerGrams = Math.max(0, Math.floor((middle - 40_000) / 5000) * 5000);
    const upperGrams = Math.ceil((middle + 40_000) / 5000) * 5000;
    const seenAt = instantOf(minute);
    this.world.diary.note(minute, lead, { kind: 'see-level', hopper: this.plan.code, lowerGrams, upperGrams, seenAt });
    this.signAccount(minute + 1, minute + 7);
    if (isRework && taken.length > 0) this.closeBin(minute + 5, taken);
  }

  private closeBin(minute: Minute, taken: readonly TakenBin[]): void {
    this.binCount += 1;
    const key = `${this.plan.code}-bin-${this.binCount}`;
    const sugar: Composition = new Map();
    for (const part of taken) pourInto(sugar, part.sugar);
    const netGrams = this.world.weigh('P1', gramsIn(sugar));
    const parents = taken.flatMap((part) => part.parents);
    this.world.diary.note(minute, this.world.leadAt(minute), { kind: 'close-bin', bin: key, netGrams, parents });
    this.bin = { key, sugar, tipAt: minute + 30 };
  }

  private tipBin(minute: Minute, bin: Bin): void {
    for (const line of this.lines) line.count(minute);
    this.tips.tipBin(minute, bin.key, bin.sugar);
    this.bin = null;
  }

  private closeRuns(minute: Minute): void {
    for (const line of this.lines) line.closeRun(minute);
    const upperGrams = Math.ceil((this.cells.levelGrams + 8000) / 10_000) * 10_000;
    const seenAt = instantOf(minute);
    this.world.diary.note(minute, this.world.leadAt(minute), {
      kind: 'run-down',
      hopper: this.plan.code,
      upperGrams,
      seenAt,
    });
    this.phase = 'clearing';
    this.phaseEndsAt = minute + 6;
  }

  /** Opened, looked in and scraped; once in a while some sugar stays where nobody can reach. */
  private proveEmpty(minute: Minute): void {
    const [campaign, next] = this.campaigns;
    const mayLeave = next?.grade === campaign?.grade && this.cells.levelGrams > 6500;
    const isLeft = mayLeave && this.world.incidents.happensNow('residue-left', minute);
    const scraped = this.cells.scrapeOut(isLeft ? 6000 : 0);
    if (gramsIn(scraped) > 0) this.noteScrapings(minute, scraped);
    this.noteEmpty(
      minute,
      isLeft ? { residueGrams: 7000, residueUpperGrams: 15_000 } : { residueGrams: 0, residueUpperGrams: 0 },
    );
    this.signAccount(minute, minute + 3);
    this.campaigns.shift();
    this.phase = 'empty';
  }

  private noteEmpty(minute: Minute, residue: { residueGrams: number; residueUpperGrams: number }): void {
    const hopper = this.plan.code;
    const by = this.world.leadAt(minute);
    this.world.diary.note(minute, by, { kind: 'prove-empty', hopper, ...residue, provenAt: instantOf(minute) });
  }

  private noteScrapings(minute: Minute, scraped: Composition): void {
    this.world.ledger.lost(scraped);
    this.world.diary.note(minute - 2, this.world.leadAt(minute), {
      kind: 'remove',
      what: 'sweepings',
      line: this.lines[0]?.plan.code ?? '',
      packCount: null,
      netGrams: this.world.weigh('P1', gramsIn(scraped)),
      reason: 'machine',
      fate: 'waste',
      removedAt: instantOf(minute - 2),
    });
  }

  private signAccount(until: Minute, minute: Minute): void {
    const [fromAt, untilAt] = [instantOf(this.accountFrom), instantOf(until)];
    const by = this.world.leadAt(until - 1);
    this.world.diary.note(minute, by, { kind: 'sign-account', hopper: this.plan.code, fromAt, untilAt });
    this.accountFrom = until;
  }
}
