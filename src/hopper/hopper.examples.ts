const id = '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10';
const at = '2026-03-12T07:41:00.000Z';

/** What answers look like, for the description of the API. */
export const tipExample = {
  ...{ id, periodId: id, bagId: id, bag: 'B0012344', netGrams: 996_500, openedAt: at, offAt: null, broken: [] },
};

export const tipRowExample = {
  ...{ id, siteId: id, periodId: id, hopperId: id, source: 'bulk-bag', bagId: id, bagNumber: 'B0012344' },
  ...{ binId: null, binNumber: null, netGrams: 996_500, openedAt: at, identifiedBy: 'scan', secondPersonId: null },
  ...{ hasHappened: false, isLate: false, offId: null, offAt: null, restGrams: null, weighingId: null },
};

export const endTipExample = { tipId: id, offAt: at, restGrams: 310_700, pouredGrams: 685_800, isDoubtful: false };

export const levelExample = {
  ...{ hopperId: id, periodId: id, asOfAt: at, lowerGrams: 258_000, grams: 298_000, upperGrams: 338_000 },
  ...{ capacityGrams: 4_000_000, findings: [], suspects: [], timesBetter: null },
};

export const contentExample = {
  level: levelExample,
  bags: [{ bagId: id, leastGrams: 0, likelyGrams: 201_000, mostGrams: 298_000, word: 'likely' }],
};

export const periodExample = {
  ...{ id, siteId: id, hopperId: id, number: 7, startedAt: at, endedAt: null, previousPeriodId: null },
  ...{ residueLowerGrams: 0, residueGrams: 0, residueUpperGrams: 0, endResidueGrams: null, endResidueUpperGrams: null },
};

export const emptyExample = { id, endedPeriodId: id, periodId: id, provenAt: at, isThreadCut: true, doubtGrams: 0 };

export const correctedEmptyExample = { endedPeriodId: id, id, periodId: id, provenAt: at, doubtGrams: 0 };

export const binExample = { id, number: 'RB-2026-000007', content: 'opened-packs', netGrams: 86_000, closedAt: at };

export const startRunExample = {
  ...{ id, number: 'PR-2026-000042', lineId: id, formatId: id, hopperId: id, periodId: id, startedAt: at, broken: [] },
};
