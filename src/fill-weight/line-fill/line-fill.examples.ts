const id = '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10';
const startedAt = '2026-03-12T06:00:00.000Z';

/** What `/api/lines/:id/fill` answers, cut short: one format, one lot. */
export const lineFillExample = {
  lineId: id,
  lineCode: '1',
  market: null,
  period: { fromAt: startedAt, days: 10 },
  formats: [
    {
      ...{ formatId: id, formatCode: 'WS-1KG', nominalMilligrams: 1_000_000, packCount: 400_000 },
      ...{
        sale: { markets: ['eu'], pricePerKilogram: '0.62', currency: 'EUR', validFrom: startedAt },
        markets: ['eu'],
      },
      setting: {
        setpoint: { milligrams: 1_007_000, changedAt: startedAt, why: 'Mean 2 g high' },
        ...{ rejectBelow: null, rejectAbove: null },
      },
      lots: [
        {
          ...{ runId: id, number: 'PR-2026-000042', startedAt, countedPackCount: 18_300, weighedPackCount: 18_240 },
          ...{ meanMilligrams: 1_008_000, standardDeviationMilligrams: 8_000, giveawayMilligrams: 145_920_000 },
          ...{ setpointMilligrams: 1_007_000, leftOut: null },
        },
      ],
      present: {
        ...{ meanMilligrams: 1_008_000, packsPerDay: 40_000, packsPerMonth: 1_200_000 },
        givenAwayKilogramsPerMonth: 9600,
      },
      variation: { sigmaMilligrams: 8_000, driftSigmaMilligrams: 1_500, driftFrom: 'settings' },
      knownLotCount: 6,
      offset: { lotCount: 6, meanMilligrams: 1_000, leastMilligrams: 400, mostMilligrams: 1_700 },
      missing: null,
      advised: {
        ruleSet: 'eu-76-211',
        asked: {
          rules: {
            ...{ nominalMilligrams: 1_000_000, t1Milligrams: 985_000, t2Milligrams: 970_000 },
            ...{ shareBeyondT1: 0.025, shareBeyondT2: 0.0001 },
          },
          ...{ sigmaMilligrams: 8_000, driftSigmaMilligrams: 1_500, setByPackCount: 50, tareLimitMilligrams: 300 },
          ...{ scaleLimitMilligrams: 500, stepMilligrams: 500, riskPerLot: 0.05 },
        },
        ...{ setpointMilligrams: 1_005_000, fillerSetpointMilligrams: 1_004_000, leftOutMarkets: [] },
        terms: [
          { name: 'lowest-mean', milligrams: 1_000_679.7 },
          { name: 'sampling-and-drift', milligrams: 3_090.4 },
          { name: 'tare', milligrams: 300 },
          { name: 'scale', milligrams: 500 },
          { name: 'rounding-up', milligrams: 429.9 },
        ],
        lowest: { byRule: { mean: 1_000_000, t1: 1_000_679.7, t2: 999_752.1 }, milligrams: 1_000_679.7, binds: 't1' },
        chance: {
          ...{ factor: 1.645, samplingMilligrams: 1_861, driftMilligrams: 2_467.3, togetherMilligrams: 3_090.4 },
        },
        risk: { mean: 0.013, t1: 0.031, t2: 0.01, any: 0.031 },
        monthlyChange: {
          savedKilograms: 3600,
          givenAwayKilograms: 9600,
          savedMoney: null,
          givenAwayMoney: null,
          currency: null,
        },
      },
    },
  ],
};
