const id = '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10';
const sums = {
  packCount: 18_240,
  errorSumMilligrams: 54_720_000,
  smallestMilligrams: 1_983_400,
  largestMilligrams: 2_021_200,
  beyondT1Count: 0,
  beyondT2Count: 0,
  errorSquareSum: '620160000000',
};
const nothing = { ...sums, packCount: 0, errorSumMilligrams: 0, smallestMilligrams: null, largestMilligrams: null };
const firstAt = '2026-03-12T06:00:00.000Z';
const mean = {
  rule: 'mean',
  packCount: 18_240,
  meanErrorMicrograms: 3_000_000,
  standardDeviationMilligrams: 5_000,
  clause: 'Annex I 1.1',
  evidence: 'seen',
  verdict: 'kept',
  reason: 'within',
};

/** What `/api/runs/:id/weights` answers, cut short: one market, one rule, one bin, one hour. */
export const runWeightsExample = {
  runId: id,
  number: 'PR-2026-000042',
  closedAt: null,
  countedPackCount: 18_300,
  weighedPackCount: 18_240,
  rejectedPackCount: 0,
  unweighedPackCount: 60,
  uncountedPackCount: 0,
  verifiedPackCount: 18_240,
  takenOutPackCount: 0,
  silences: [],
  yardstick: { nominalMilligrams: 2_000_000, t1Milligrams: 1_970_000, t2Milligrams: 1_940_000, binMilligrams: 1000 },
  weighed: {
    meanErrorMicrograms: 3_000_000,
    standardDeviationMilligrams: 5_000,
    smallestMilligrams: 1_983_400,
    largestMilligrams: 2_021_200,
    giveawayMilligrams: 54_720_000,
    bins: [{ fromMilligrams: 2_003_000, untilMilligrams: 2_004_000, packCount: 1_420 }],
    isBeyondBins: false,
  },
  sale: { markets: ['eu'], pricePerKilogram: '0.62', currency: 'EUR', validFrom: firstAt },
  verdicts: [
    {
      nominalMilligrams: 2_000_000,
      market: 'eu',
      overall: 'kept',
      outside: null,
      ruleSets: [{ ruleSet: 'eu-76-211', lines: [mean] }],
    },
  ],
  hours: [
    {
      hourAt: firstAt,
      packCount: 1_420,
      meanErrorMicrograms: 3_000_000,
      beyondT1Count: 0,
      beyondT2Count: 0,
    },
  ],
  heads: [
    {
      head: 7,
      packCount: 1_303,
      meanErrorMilligrams: 1_340.5,
      standardDeviationMilligrams: 4_890.2,
      beyondT1Count: 0,
      fromOthersMilligrams: -1_787.6,
      isOff: true,
    },
  ],
  noHeadPackCount: 12,
  zeroOrNoHeadPackCount: 0,
  events: [{ at: '2026-03-12T09:12:00.000Z', text: 'Stop: jam' }],
  unreadable: [],
  charted: {
    weigherId: id,
    everyMinutes: 15,
    size: 14,
    subgroups: [{ at: firstAt, meanMilligrams: 2_003_100, standardDeviationMilligrams: 4_700.5 }],
  },
  weighers: [
    {
      weigherId: id,
      firstAt,
      lastAt: '2026-03-12T13:59:58.200Z',
      accepted: sums,
      rejected: { ...nothing, errorSquareSum: '0' },
    },
  ],
};
