import type { Random } from '../plant-physics/random.js';
import type { SentPacks } from './act.js';
import type { Minute } from './minutes.js';
import type { FormatCode } from './demo-plan.js';
import type { World } from './world.js';

/** Packs that were filled one after the other in a minute: what all of them hold, and one that is thrown out. */
type Filled =
  | { readonly kind: 'good'; readonly minute: Minute; readonly packCount: number; readonly grams: number }
  | { readonly kind: 'out'; readonly minute: Minute; readonly grams: number };

/** What the weigher has to know of the run. */
export interface WeighedRun {
  readonly key: string;
  readonly format: FormatCode;
  readonly spreadGrams: number;
}

interface WrongTare {
  readonly run: string;
  readonly fromSequence: number;
  toSequence: number;
}

// All invented. The weigher is a little off, and by how much wanders through the day; it shows steps of 0.1 g.
const [usualBiasGrams, wanderingGrams, noiseGrams] = [0.15, 0.35, 0.15];
export const [weigherStepMilligrams, weigherErrorMilligrams] = [100, 1000];
const [lightHead, lightByGrams] = [3, 5];
const wrongTareMilligrams = 3500;
const dayMinutes = 1440;

/** What goes wrong with weighing, in minutes before the demo ends: recent enough to be looked at, over by then. */
const silentBefore = { line: '1', from: 1190, until: 1120 };
const lightBefore = { line: '2', from: 2160, until: 720 };
const wrongTareBefore = { line: '1', from: 1870, until: 1830 };

/** Heads of a line's filler, as its weigher tells them apart. */
export const headCountOf = (line: string): number => (line === '1' ? 10 : 8);

/** The pack weigher of a line: what it makes of the packs, and when it sends that. */
export class PackWeighing {
  private readonly random: Random;
  private filled: Filled[] = [];
  private sequence = 0;
  private wrongTare: WrongTare | null = null;
  private isTareNoted = false;
  private hasLightHead = false;
  private ofRun: string | null = null;

  constructor(
    private readonly world: World,
    private readonly line: string,
  ) {
    this.random = world.random(`weigher ${line}`);
  }

  packed(minute: Minute, packCount: number, grams: number): void {
    this.filled.push({ kind: 'good', minute, packCount, grams });
  }

  thrownOut(minute: Minute, grams: number): void {
    this.filled.push({ kind: 'out', minute, grams });
  }

  /** All that was weighed since it sent the last time. */
  send(minute: Minute, run: WeighedRun): void {
    const sent = emptyPacks(this.filled.reduce((sum, one) => sum + (one.kind === 'good' ? one.packCount : 1), 0));
    const { key, spreadGrams } = run;
    if (this.ofRun !== key) this.hasLightHead = this.isIn(lightBefore, minute);
    this.ofRun = key;
    let count = 0;
    for (const [fromMinute, filled] of byMinute(this.filled)) {
      count = this.weighMinute(fromMinute, filled, { run, spreadGrams, sent, count });
    }
    this.filled = [];
    if (count > 0)
      this.world.diary.note(minute, 'counter', {
        kind: 'send-weights',
        line: this.line,
        run: key,
        packs: cut(sent, count),
      });
    this.noteTare(minute);
  }

  private weighMinute(
    minute: Minute,
    filled: readonly Filled[],
    { run, spreadGrams, sent, count }: { run: WeighedRun; spreadGrams: number; sent: SentPacks; count: number },
  ): number {
    const nets = this.netsOf(filled, spreadGrams);
    // Minute by minute, whether or not a pack came through.
    const biasGrams = usualBiasGrams + wanderingGrams * Math.sin((2 * Math.PI * (minute % dayMinutes)) / dayMinutes);
    const isSilent = this.isIn(silentBefore, minute);
    const isWrong = this.isIn(wrongTareBefore, minute) && (this.wrongTare === null || this.wrongTare.run === run.key);
    let place = count;
    nets.forEach(({ grams, isOut }, index) => {
      this.sequence += 1;
      if (isSilent) return;
      const shownGrams = grams + biasGrams + this.random.normal(0, noiseGrams);
      const stepped = Math.round((shownGrams * 1000) / weigherStepMilligrams) * weigherStepMilligrams;
      sent.sequences[place] = this.sequence;
      sent.atCentiseconds[place] = minute * 6000 + Math.floor(((index + 0.5) / nets.length) * 6000);
      sent.netMilligrams[place] = stepped + (isWrong ? wrongTareMilligrams : 0);
      sent.heads[place] = this.sequence % headCountOf(this.line);
      sent.isRejected[place] = isOut ? 1 : 0;
      place += 1;
    });
    if (isWrong && place > count) this.rememberTare(run.key, sent.sequences[count] ?? 0);
    return place;
  }

  /** Each pack's own net: they vary, one head may fill light, and together they hold what was filled. */
  private netsOf(filled: readonly Filled[], spreadGrams: number): readonly { grams: number; isOut: boolean }[] {
    const nets: { grams: number; isOut: boolean }[] = [];
    for (const one of filled) {
      if (one.kind === 'out') {
        nets.push({ grams: one.grams, isOut: true });
        continue;
      }
      const parts = Array.from({ length: one.packCount }, (_, place) => {
        const head = (this.sequence + nets.length + place + 1) % headCountOf(this.line);
        return this.random.normal(this.hasLightHead && head === lightHead ? -lightByGrams : 0, spreadGrams);
      });
      const mean = (one.grams - parts.reduce((sum, part) => sum + part, 0)) / one.packCount;
      nets.push(...parts.map((part) => ({ grams: mean + part, isOut: false })));
    }
    return nets;
  }

  private rememberTare(run: string, fromSequence: number): void {
    this.wrongTare ??= { run, fromSequence, toSequence: this.sequence };
    this.wrongTare.toSequence = this.sequence;
  }

  /** Somebody weighs empty film at the next shift, and the manager puts it right. */
  private noteTare(minute: Minute): void {
    const { wrongTare } = this;
    if (wrongTare === null || this.isTareNoted || this.isIn(wrongTareBefore, minute)) return;
    this.isTareNoted = true;
    const reason = 'The film of this lot is heavier: ten empties weighed 3.5 g more than the tare that was set';
    const added = { addedMilligrams: -wrongTareMilligrams, reason };
    this.world.diary.note(minute + 12, 'manager', { kind: 'correct-tare', line: this.line, ...wrongTare, ...added });
  }

  private isIn(
    stretch: { readonly line: string; readonly from: number; readonly until: number },
    minute: Minute,
  ): boolean {
    const { until } = this.world.plan;
    return stretch.line === this.line && minute >= until - stretch.from && minute < until - stretch.until;
  }
}

function byMinute(filled: readonly Filled[]): ReadonlyMap<Minute, readonly Filled[]> {
  const groups = new Map<Minute, Filled[]>();
  for (const one of filled) {
    const group = groups.get(one.minute);
    if (group === undefined) groups.set(one.minute, [one]);
    else group.push(one);
  }
  return groups;
}

function emptyPacks(count: number): SentPacks {
  return {
    sequences: new Float64Array(count),
    atCentiseconds: new Float64Array(count),
    netMilligrams: new Int32Array(count),
    heads: new Uint8Array(count),
    isRejected: new Uint8Array(count),
  };
}

function cut(packs: SentPacks, count: number): SentPacks {
  return {
    sequences: packs.sequences.subarray(0, count),
    atCentiseconds: packs.atCentiseconds.subarray(0, count),
    netMilligrams: packs.netMilligrams.subarray(0, count),
    heads: packs.heads.subarray(0, count),
    isRejected: packs.isRejected.subarray(0, count),
  };
}
