import { describe, expect, it } from '@jest/globals';
import { describeWithChecks, readChecks } from '../../../test/support/checks.js';
import { addDays } from './calendar-day.js';
import { continentalRota, fourOnFourOffRota, threeByEightShifts, twoByTwelveShifts } from './common-patterns.js';
import { type ShiftPattern, crewOn, cycleOfLetters, minutesIntoProductionDay, shiftOfCrew } from './shift-pattern.js';
import { assertShiftPattern, problemsOfShiftPattern } from './shift-pattern-problems.js';
import { averageWeeklyHours, clockMinutesOfShifts } from './working-hours.js';

type Letters = Readonly<Record<string, string>>;
interface RotaChecks {
  readonly rota_4on4off_12h_16day: Letters;
  readonly rota_2_2_3_12h_14day: Letters;
  readonly rota_continental_2_2_3_3x8_28day: Letters;
  readonly avg_hours_per_week: Readonly<Record<string, number>>;
}

const teams = ['T1', 'T2', 'T3', 'T4'];
const twoByTwelve: ShiftPattern = { productionDayStart: '06:00', shifts: twoByTwelveShifts, rota: null };
const threeByEight: ShiftPattern = { productionDayStart: '06:00', shifts: threeByEightShifts, rota: null };
const fourOnFourOff: ShiftPattern = { ...twoByTwelve, rota: fourOnFourOffRota('2026-01-01', teams) };
const continental: ShiftPattern = { ...threeByEight, rota: continentalRota('2026-01-01', teams) };
const twoTwoThree: ShiftPattern = {
  ...twoByTwelve,
  rota: {
    startsOn: '2026-01-05',
    crews: [cycleOfLetters('T1', 'DDooDDDooDDooo'), cycleOfLetters('T2', 'ooDDoooDDooDDD')],
  },
};

describe('a shift pattern', () => {
  it('counts the hours after midnight to the day before', () => {
    expect(minutesIntoProductionDay('06:00', '02:30')).toBe(1230);
    expect(minutesIntoProductionDay('06:00', '06:00')).toBe(0);
    expect(() => minutesIntoProductionDay('06:00', '24:00')).toThrow(RangeError);
  });

  it('repeats a crew’s cycle forward and backward', () => {
    const red = { crew: 'Red', shiftCodes: ['D', null] };
    expect(shiftOfCrew(red, '2026-01-01', '2025-12-30')).toBe('D');
    expect(shiftOfCrew(red, '2026-01-01', '2025-12-31')).toBeNull();
    expect(shiftOfCrew(red, '2026-01-01', '2026-01-03')).toBe('D');
    expect(() => shiftOfCrew({ crew: 'Red', shiftCodes: [] }, '2026-01-01', '2026-01-01')).toThrow(RangeError);
  });

  it('reads rotas as they are written', () => {
    expect(cycleOfLetters('T1', 'DDo')).toEqual({ crew: 'T1', shiftCodes: ['D', 'D', null] });
  });

  it('says who is on a shift', () => {
    expect(crewOn(fourOnFourOff, '2026-01-05', 'N')).toBe('T4');
    expect(crewOn(fourOnFourOff, '2026-01-01', 'N')).toBe('T3');
    expect(crewOn(threeByEight, '2026-01-05', 'N')).toBeNull();
  });

  it('puts nobody on a day that every crew has off', () => {
    const weekdaysOnly: ShiftPattern = {
      ...twoByTwelve,
      rota: { startsOn: '2026-01-05', crews: [cycleOfLetters('A', 'DDDDDoo'), cycleOfLetters('B', 'NNNNNoo')] },
    };
    expect(crewOn(weekdaysOnly, '2026-01-09', 'D')).toBe('A');
    expect(crewOn(weekdaysOnly, '2026-01-10', 'D')).toBeNull();
    expect(crewOn(weekdaysOnly, '2026-01-11', 'N')).toBeNull();
  });

  it.each([
    ['four on, four off', fourOnFourOff, 16],
    ['continental', continental, 28],
  ] as const)('%s has exactly one crew on every shift of every day', (_name, pattern, days) => {
    for (let day = 0; day < days; day += 1) {
      const on = addDays('2026-01-01', day);
      const crews = pattern.shifts.map(({ code }) => crewOn(pattern, on, code));
      expect(crews).not.toContain(null);
      expect(new Set(crews).size).toBe(pattern.shifts.length);
    }
  });

  it('common rotas are for four crews', () => {
    expect(fourOnFourOffRota('2026-01-01', teams).crews).toHaveLength(4);
    expect(continentalRota('2026-01-01', teams).crews[1]?.shiftCodes.slice(0, 3)).toEqual([null, null, 'M']);
    expect(() => fourOnFourOffRota('2026-01-01', ['T1'])).toThrow(RangeError);
  });

  it('adds the hours of a crew up', () => {
    expect(clockMinutesOfShifts(twoByTwelve)).toEqual(
      new Map([
        ['D', 720],
        ['N', 720],
      ]),
    );
    expect(averageWeeklyHours(fourOnFourOff, 'T1')).toBe(42);
    expect(() => averageWeeklyHours(fourOnFourOff, 'T5')).toThrow(RangeError);
    expect(() => averageWeeklyHours(twoByTwelve, 'T1')).toThrow(RangeError);
  });
});

describe('a pattern that cannot be used', () => {
  const [day, night] = twoByTwelveShifts;
  if (day === undefined || night === undefined) throw new Error('two shifts expected');
  const withCycles = (...letters: readonly string[]): ShiftPattern => ({
    ...twoByTwelve,
    rota: { startsOn: '2026-01-01', crews: letters.map((text, index) => cycleOfLetters(`T${index}`, text)) },
  });

  it('is told apart from good ones', () => {
    for (const good of [twoByTwelve, threeByEight, fourOnFourOff, continental, twoTwoThree]) {
      expect(problemsOfShiftPattern(good)).toEqual([]);
      expect(() => {
        assertShiftPattern(good);
      }).not.toThrow();
    }
  });

  it.each<readonly [string, ShiftPattern]>([
    ['no-shifts', { productionDayStart: '06:00', shifts: [], rota: null }],
    ['time-not-of-the-clock', { ...twoByTwelve, productionDayStart: '6 am' }],
    ['time-not-of-the-clock', { ...twoByTwelve, shifts: [day, { ...night, startTime: '25:00' }] }],
    ['first-shift-not-at-production-day-start', { ...twoByTwelve, productionDayStart: '05:00' }],
    [
      'shifts-not-in-order',
      { ...threeByEight, shifts: [...threeByEightShifts, { code: 'X', name: 'X', startTime: '10:00' }] },
    ],
    ['shift-code-empty-or-twice', { ...twoByTwelve, shifts: [day, { ...night, code: 'D' }] }],
    ['shift-code-empty-or-twice', { ...twoByTwelve, shifts: [day, { ...night, code: '' }] }],
    ['rota-start-not-a-day', { ...twoByTwelve, rota: { startsOn: '2026-02-30', crews: [] } }],
    ['cycle-empty', withCycles('DDoo', '')],
    ['cycle-names-unknown-shift', withCycles('DDMM')],
    ['two-crews-on-one-shift', withCycles('Do', 'ooD')],
    [
      'crew-empty-or-twice',
      {
        ...twoByTwelve,
        rota: { startsOn: '2026-01-01', crews: [cycleOfLetters('T1', 'D'), cycleOfLetters('T1', 'N')] },
      },
    ],
  ])('%s', (problem, pattern) => {
    expect(problemsOfShiftPattern(pattern)).toEqual([problem]);
    expect(() => {
      assertShiftPattern(pattern);
    }).toThrow(problem);
  });
});

describeWithChecks('rotas against worked values', () => {
  const checks = () => readChecks<RotaChecks>('quality/shift_calendar_tests.json');

  it.each([
    ['rota_4on4off_12h_16day', fourOnFourOff],
    ['rota_2_2_3_12h_14day', twoTwoThree],
    ['rota_continental_2_2_3_3x8_28day', continental],
  ] as const)('%s has the same days for each crew', (name, pattern) => {
    const rota = checks()[name];
    expect(Object.keys(rota).length).toBeGreaterThan(1);
    for (const [crew, letters] of Object.entries(rota)) {
      const cycle = pattern.rota?.crews.find((one) => one.crew === crew);
      expect(cycle?.shiftCodes.map((code) => code ?? 'o').join('')).toBe(letters);
    }
  });

  it('agree in the average hours a week', () => {
    const hours = checks().avg_hours_per_week;
    expect(averageWeeklyHours(fourOnFourOff, 'T3')).toBe(hours['4-on-4-off 12h']);
    expect(averageWeeklyHours(continental, 'T4')).toBe(hours['4 teams 24/7']);
    const fiveCrews = { ...threeByEight, rota: { startsOn: '2026-01-01', crews: [cycleOfLetters('A', 'MMAANNoooo')] } };
    expect(averageWeeklyHours(fiveCrews, 'A')).toBe(hours['5 teams 24/7']);
    const fiveDays = {
      ...threeByEight,
      rota: { startsOn: '2026-01-05', crews: [cycleOfLetters('A', 'MMMMMooAAAAAooNNNNNoo')] },
    };
    expect(averageWeeklyHours(fiveDays, 'A')).toBe(hours['3 teams 5x3x8']);
  });
});
