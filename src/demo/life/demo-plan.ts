import { addDays } from '../../core/shift-calendar/calendar-day.js';
import { minuteOfLocal, productionDayStart, shiftsFrom, type DemoShift, type Minute } from './minutes.js';

export interface DemoOptions {
  readonly days: number;
  readonly seed: number;
  readonly size: 'usual' | 'large';
}

export type GradeCode = 'WS2' | 'WS1' | 'IND';
export type FormatCode = 'WS-2KG' | 'WS-1KG' | 'XF-1KG';

export interface LinePlan {
  readonly code: string;
  readonly hopper: string;
  /** What it packs of which grade, and how fast. */
  readonly packs: Readonly<Partial<Record<GradeCode, { readonly format: FormatCode; readonly perMinute: number }>>>;
}

export interface HopperPlan {
  readonly code: string;
  readonly capacityGrams: number;
  /** The lead hangs the next bag when less than this is inside. */
  readonly tipBelowGrams: number;
  readonly drainMinutes: number;
}

/** The sugar of one grade through a hopper, from the first tip to the proven empty. */
export interface Campaign {
  readonly hopper: string;
  readonly grade: GradeCode;
  readonly from: Minute;
  /** The hopper is to be run empty by then. */
  readonly until: Minute;
}

export interface DemoPlan extends DemoOptions {
  readonly startOn: string;
  readonly from: Minute;
  readonly until: Minute;
  /** Those of all days, and of the one that has begun when the demo ends. */
  readonly shifts: readonly DemoShift[];
  readonly dryers: readonly { readonly code: string; readonly kilogramsPerMinute: number }[];
  readonly hoppers: readonly HopperPlan[];
  readonly lines: readonly LinePlan[];
  readonly campaigns: readonly Campaign[];
  /** Stretches in which a dryer makes the extra white grade. */
  readonly extraWhite: readonly { readonly from: Minute; readonly until: Minute }[];
  readonly openingBags: Readonly<Partial<Record<GradeCode, number>>>;
}

/** The last whole production day: in the night before it the clocks go back (2026-10-25, 03:00 to 02:00). */
export const lastWholeOn = '2026-10-25';

/** The demo ends in the middle of the next morning, with everything running. */
const endTime = '10:25';

/** Lays out the days: when the demo begins, what runs where, and which grade goes through which hopper when. */
export function planDemo(options: DemoOptions): DemoPlan {
  const startOn = addDays(lastWholeOn, 1 - options.days);
  const shifts = shiftsFrom(startOn, options.days + 1);
  const from = minuteOfLocal(startOn, productionDayStart);
  const until = minuteOfLocal(addDays(lastWholeOn, 1), endTime);
  const plant = options.size === 'large' ? largePlant : usualPlant;
  const base = { ...options, startOn, from, until, shifts, ...plant };
  if (options.size === 'large') return { ...base, campaigns: dayCampaigns(plant.hoppers, shifts), extraWhite: [] };
  return { ...base, ...withExtraWhite(shifts) };
}

const usualPlant: Pick<DemoPlan, 'dryers' | 'hoppers' | 'lines' | 'openingBags'> = {
  dryers: [{ code: 'D1', kilogramsPerMinute: 60.5 }],
  hoppers: [{ code: 'H1', capacityGrams: 3_000_000, tipBelowGrams: 420_000, drainMinutes: 4 }],
  lines: [
    {
      code: '1',
      hopper: 'H1',
      packs: { WS2: { format: 'WS-2KG', perMinute: 20 }, WS1: { format: 'XF-1KG', perMinute: 34 } },
    },
    {
      code: '2',
      hopper: 'H1',
      packs: { WS2: { format: 'WS-1KG', perMinute: 25 }, WS1: { format: 'XF-1KG', perMinute: 28 } },
    },
  ],
  openingBags: { WS2: 46, WS1: 34 },
};

/** 200 000 packs of 2 kg a day on four lines: common practice, no source. */
const largePerMinute = 37.9;
const largeLine = (code: string, hopper: string): LinePlan => ({
  code,
  hopper,
  packs: { WS2: { format: 'WS-2KG', perMinute: largePerMinute } },
});
const largeHopper = (code: string): HopperPlan => ({
  code,
  capacityGrams: 6_000_000,
  tipBelowGrams: 1_300_000,
  drainMinutes: 3,
});
const largePlant: Pick<DemoPlan, 'dryers' | 'hoppers' | 'lines' | 'openingBags'> = {
  dryers: [
    { code: 'D1', kilogramsPerMinute: 152 },
    { code: 'D2', kilogramsPerMinute: 152 },
  ],
  hoppers: [largeHopper('H1'), largeHopper('H2')],
  lines: [largeLine('1', 'H1'), largeLine('2', 'H1'), largeLine('3', 'H2'), largeLine('4', 'H2')],
  openingBags: { WS2: 230 },
};

const startUpMinutes = 12;
const clearUpMinutes = 14;

/** Each hopper is run empty once a day, at the end of the night shift. */
function dayCampaigns(hoppers: readonly HopperPlan[], shifts: readonly DemoShift[]): readonly Campaign[] {
  return daysOf(shifts).flatMap((day) => hoppers.map(({ code }) => campaign(code, 'WS2', day)));
}

/**
 * Every third day the afternoon packs extra white, made by the dryer in the morning shift of the day before (the first
 * time it comes from the opening stock).
 */
function withExtraWhite(shifts: readonly DemoShift[]): Pick<DemoPlan, 'campaigns' | 'extraWhite'> {
  const days = daysOf(shifts);
  const extraWhite = days.filter((_, place) => place % 3 === 0 && place > 0).map(([morning]) => span([morning]));
  const campaigns = days.flatMap((day, place) => {
    if (place % 3 !== 1) return [campaign('H1', 'WS2', day)];
    const [morning, afternoon, night] = day;
    return [campaign('H1', 'WS2', [morning]), campaign('H1', 'WS1', [afternoon]), campaign('H1', 'WS2', [night])];
  });
  return { campaigns, extraWhite };
}

type Day = readonly [DemoShift, ...DemoShift[]];

function daysOf(shifts: readonly DemoShift[]): readonly (readonly [DemoShift, DemoShift, DemoShift])[] {
  return Array.from({ length: Math.floor(shifts.length / 3) }, (_, day) => {
    const [morning, afternoon, night] = shifts.slice(day * 3);
    if (morning === undefined || afternoon === undefined || night === undefined)
      throw new RangeError('A day of 3 shifts');
    return [morning, afternoon, night] as const;
  });
}

function campaign(hopper: string, grade: GradeCode, shifts: Day | readonly (DemoShift | undefined)[]): Campaign {
  const { from, until } = span(shifts);
  return { hopper, grade, from: from + startUpMinutes, until: until - clearUpMinutes };
}

function span(shifts: readonly (DemoShift | undefined)[]): { readonly from: Minute; readonly until: Minute } {
  const [first, last] = [shifts[0], shifts.at(-1)];
  if (first === undefined || last === undefined) throw new RangeError('No shift');
  return { from: first.from, until: last.until };
}
