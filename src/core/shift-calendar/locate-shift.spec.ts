import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { describeWithChecks, readChecks } from '../../../test/support/checks.js';
import { addDays } from './calendar-day.js';
import { fourOnFourOffRota, threeByEightShifts, twoByTwelveShifts } from './common-patterns.js';
import { instantOfMilliseconds, millisecondsOfInstant } from './instant.js';
import { instantOfLocalTime, localText } from './local-time.js';
import { locateShift, productionDayAt, productionDayBounds, shiftsOfDay } from './locate-shift.js';
import { type ShiftPattern, cycleOfLetters } from './shift-pattern.js';

interface LengthCheck {
  readonly tz: string;
  readonly start: string;
  readonly end: string;
  readonly elapsed_h: number;
}
interface DayCheck {
  readonly utc: string;
  readonly tz: string;
  readonly prod_day: string;
  readonly local: string;
}

const berlin = 'Europe/Berlin';
const threeByEight: ShiftPattern = { productionDayStart: '06:00', shifts: threeByEightShifts, rota: null };
const twoByTwelve: ShiftPattern = { productionDayStart: '06:00', shifts: twoByTwelveShifts, rota: null };
const fromMidnight: ShiftPattern = {
  productionDayStart: '00:00',
  shifts: [
    { code: 'N', name: 'Night', startTime: '00:00' },
    { code: 'D', name: 'Day', startTime: '08:00' },
    { code: 'L', name: 'Late', startTime: '16:00' },
  ],
  rota: null,
};
const atTheChange: ShiftPattern = {
  productionDayStart: '02:30',
  shifts: [
    { code: 'E', name: 'Early', startTime: '02:30' },
    { code: 'L', name: 'Late', startTime: '14:30' },
    { code: 'X', name: 'Odd', startTime: '02:10' },
  ],
  rota: null,
};

describe('the shift of an instant', () => {
  it('is the night of the day before for the hour after midnight, with its true length', () => {
    expect(locateShift(threeByEight, berlin, '2026-10-25T01:30:00.000Z')).toEqual({
      productionOn: '2026-10-24',
      shiftCode: 'N',
      startsAt: '2026-10-24T20:00:00.000Z',
      endsAt: '2026-10-25T05:00:00.000Z',
      lengthMinutes: 540,
      crew: null,
      isWorked: true,
    });
    expect(productionDayAt(threeByEight, berlin, '2026-01-01T01:00:00.000Z')).toBe('2025-12-31');
  });

  it('holds its first instant and not its last', () => {
    expect(locateShift(threeByEight, berlin, '2026-07-01T12:00:00.000Z').shiftCode).toBe('A');
    expect(locateShift(threeByEight, berlin, '2026-07-01T11:59:59.999Z').shiftCode).toBe('M');
  });

  it('is an hour shorter in the night when the clocks go forward', () => {
    expect(shiftsOfDay(threeByEight, berlin, '2026-03-28').map(({ lengthMinutes }) => lengthMinutes)).toEqual([
      480, 480, 420,
    ]);
    expect(productionDayBounds(threeByEight, berlin, '2026-10-24')).toEqual({
      startsAt: '2026-10-24T04:00:00.000Z',
      endsAt: '2026-10-25T05:00:00.000Z',
    });
  });

  it('names the crew, and says when nobody works', () => {
    const rota = fourOnFourOffRota('2026-01-01', ['T1', 'T2', 'T3', 'T4']);
    const night = locateShift({ ...twoByTwelve, rota }, berlin, '2026-01-06T02:00:00.000Z');
    expect(night).toMatchObject({ productionOn: '2026-01-05', shiftCode: 'N', crew: 'T4', isWorked: true });

    const weekdays = {
      startsOn: '2026-01-05',
      crews: [cycleOfLetters('A', 'DDDDDoo'), cycleOfLetters('B', 'NNNNNoo')],
    };
    const weekend = locateShift({ ...twoByTwelve, rota: weekdays }, berlin, '2026-01-10T10:00:00.000Z');
    expect(weekend).toMatchObject({ productionOn: '2026-01-10', shiftCode: 'D', crew: null, isWorked: false });
  });

  it('stays in the day that has begun when the clocks go back over midnight', () => {
    // On 7 November 2010 the clocks of St John’s went from 00:01 back to 23:01 (IANA time-zone database).
    const zone = 'America/St_Johns';
    const secondComing = '2010-11-07T03:00:00.000Z';
    expect(localText(zone, secondComing)).toBe('2010-11-06T23:30:00-03:30');
    expect(productionDayAt(fromMidnight, zone, secondComing)).toBe('2010-11-07');
    expect(productionDayAt(fromMidnight, zone, '2010-11-07T02:29:00.000Z')).toBe('2010-11-06');
  });

  it('leaves out the shifts of a day that the zone left out', () => {
    expect(shiftsOfDay(fromMidnight, 'Pacific/Apia', '2011-12-30')).toEqual([]);
    expect(productionDayAt(fromMidnight, 'Pacific/Apia', '2011-12-30T10:00:00.000Z')).toBe('2011-12-31');
  });

  it('leaves out a shift that the clocks jump over', () => {
    const codes = (on: string): readonly string[] =>
      shiftsOfDay(atTheChange, berlin, on).map(({ shiftCode }) => shiftCode);
    expect(codes('2026-03-27')).toEqual(['E', 'L', 'X']);
    expect(codes('2026-03-28')).toEqual(['E', 'L']);
  });

  it('needs a good pattern, a zone and an instant', () => {
    expect(() => locateShift({ ...threeByEight, shifts: [] }, berlin, '2026-01-01T00:00:00.000Z')).toThrow('no-shifts');
    expect(() => locateShift(threeByEight, 'Europe/Alder_Quay', '2026-01-01T00:00:00.000Z')).toThrow(RangeError);
    expect(() => locateShift(threeByEight, berlin, '2026-01-01')).toThrow(RangeError);
    expect(() => shiftsOfDay(threeByEight, berlin, '2026-02-30')).toThrow(RangeError);
  });
});

describe('whatever the zone and the season', () => {
  const zones = [
    'UTC',
    'Europe/Berlin',
    'Europe/London',
    'America/New_York',
    'America/St_Johns',
    'America/Sao_Paulo',
    'Asia/Kolkata',
    'Australia/Lord_Howe',
    'Africa/Cairo',
    'Pacific/Apia',
  ];
  const anyZone = fc.constantFrom(...zones);
  const anyPattern = fc.constantFrom(threeByEight, twoByTwelve, fromMidnight, atTheChange);
  const anyDay = fc.integer({ min: 0, max: 12_000 }).map((days) => addDays('2000-01-01', days));
  const anyMilliseconds = fc.integer({ min: Date.parse('2000-01-03'), max: Date.parse('2035-01-01') });

  it('the shifts of consecutive days follow each other without a hole or an overlap', () => {
    fc.assert(
      fc.property(anyPattern, anyZone, anyDay, (pattern, zone, firstOn) => {
        const shifts = [0, 1, 2].flatMap((day) => shiftsOfDay(pattern, zone, addDays(firstOn, day)));
        expect(shifts.slice(1).map(({ startsAt }) => startsAt)).toEqual(
          shifts.slice(0, -1).map(({ endsAt }) => endsAt),
        );
        expect(shifts[0]?.startsAt).toBe(productionDayBounds(pattern, zone, firstOn).startsAt);
        expect(shifts.at(-1)?.endsAt).toBe(productionDayBounds(pattern, zone, addDays(firstOn, 2)).endsAt);
      }),
    );
  });

  it('an instant is located in one of the shifts of its production day', () => {
    fc.assert(
      fc.property(anyPattern, anyZone, anyMilliseconds, (pattern, zone, milliseconds) => {
        const at = instantOfMilliseconds(milliseconds);
        const shift = locateShift(pattern, zone, at);
        expect(shift.startsAt <= at && at < shift.endsAt).toBe(true);
        expect(shiftsOfDay(pattern, zone, shift.productionOn)).toContainEqual(shift);
        expect(shift.lengthMinutes * 60_000).toBe(
          millisecondsOfInstant(shift.endsAt) - millisecondsOfInstant(shift.startsAt),
        );
      }),
    );
  });

  it('the production day never goes back as time goes on', () => {
    const hours = fc.integer({ min: 0, max: 72 });
    fc.assert(
      fc.property(anyPattern, anyZone, anyMilliseconds, hours, (pattern, zone, milliseconds, later) => {
        const first = productionDayAt(pattern, zone, instantOfMilliseconds(milliseconds));
        const second = productionDayAt(pattern, zone, instantOfMilliseconds(milliseconds + later * 3_600_000));
        expect(first <= second).toBe(true);
      }),
    );
  });

  it('the production day never goes back over a clock change, minute by minute', () => {
    const changes = [
      ['America/St_Johns', '2010-11-07T00:00:00.000Z'],
      ['Pacific/Apia', '2011-12-30T06:00:00.000Z'],
      ['Africa/Cairo', '2026-04-23T18:00:00.000Z'],
      ['Europe/Berlin', '2026-10-24T22:00:00.000Z'],
    ] as const;
    for (const [zone, from] of changes) {
      let last = '';
      for (let minute = 0; minute < 600; minute += 1) {
        const at = instantOfMilliseconds(millisecondsOfInstant(from) + minute * 60_000);
        const on = productionDayAt(fromMidnight, zone, at);
        expect(last <= on).toBe(true);
        last = on;
      }
    }
  });
});

describeWithChecks('shifts against worked values', () => {
  const checks = () =>
    readChecks<{
      dst_shift_lengths: readonly LengthCheck[];
      production_day_tests_start_0600: readonly DayCheck[];
    }>('quality/shift_calendar_tests.json');

  it('agree in the true length of nights over clock changes', () => {
    const lengths = checks().dst_shift_lengths;
    expect(lengths.length).toBeGreaterThan(0);
    for (const { tz, start, end, elapsed_h } of lengths) {
      const [on = '', time = ''] = start.split('T');
      const pattern = time === '22:00' ? threeByEight : twoByTwelve;
      const night = locateShift(pattern, tz, instantOfLocalTime(tz, on, time));
      expect([tz, start, night.lengthMinutes]).toEqual([tz, start, elapsed_h * 60]);
      expect(night).toMatchObject({ productionOn: on, shiftCode: 'N' });
      expect(localText(tz, night.endsAt).slice(0, 16)).toBe(end);
    }
  });

  it('agree in the production day and in what the clock shows', () => {
    const days = checks().production_day_tests_start_0600;
    expect(days.length).toBeGreaterThan(0);
    for (const { utc, tz, prod_day, local } of days) {
      const at = instantOfMilliseconds(Date.parse(utc));
      expect([utc, productionDayAt(threeByEight, tz, at)]).toEqual([utc, prod_day]);
      expect(localText(tz, at)).toBe(local);
    }
  });
});
