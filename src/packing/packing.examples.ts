const id = '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10';
const at = '2026-03-12T07:41:00.000Z';

/** What answers look like, for the description of the API. */
export const runExample = {
  id,
  siteId: id,
  number: 'PR-2026-000042',
  lineId: id,
  lineCode: '1',
  lineName: 'Line 1',
  formatId: id,
  formatCode: 'WS-2KG',
  formatName: 'White sugar 2 kg',
  gtin: '09520123000103',
  nominalGrams: 2000,
  startedAt: at,
  closedAt: null,
  packCount: 1260,
  lastCountedAt: at,
};

export const countExample = { runId: id, countIds: [id], packCount: 1260 };

export const changeExample = {
  id,
  runId: id,
  lotId: id,
  code: 'L6071A1',
  intendedCode: 'L6071A1',
  isAsIntended: true,
  firstPack: 0,
  changedAt: at,
};

export const filmExample = { id, runId: id, filmLotId: id, code: 'F-88123', firstPack: 0, fittedAt: at };

export const looseExample = { id, runId: id, loosePackCount: 46, countedAt: at };

export const closeExample = {
  id,
  runId: id,
  number: 'PR-2026-000042',
  packCount: 19_200,
  loosePackCount: 0,
  closedAt: at,
  packsWithoutCode: 0,
};

export const stopExample = { id, runId: id, reason: 'jam', stoppedAt: at };

export const restartExample = { id, stopId: id, runId: id, startedAgainAt: at, minutes: 12 };

export const removalExample = {
  id,
  siteId: id,
  kind: 'reject',
  runId: id,
  lineId: id,
  hopperId: id,
  packCount: 12,
  grams: 24_000,
  scaleId: null,
  reason: 'underweight',
  fate: 'rework',
  removedAt: at,
};

export const lotExample = {
  id,
  siteId: id,
  formatId: id,
  formatCode: 'WS-2KG',
  formatName: 'White sugar 2 kg',
  gtin: '09520123000103',
  code: 'L6071A1',
  searchCode: '6071A1',
};

export const lotRangeExample = {
  runId: id,
  changeId: id,
  lotId: id,
  code: 'L6071A1',
  changedAt: at,
  intendedCode: 'L6071A1',
  isAsIntended: true,
  fromCount: 0,
  toCount: 9840,
};

export const filmLotExample = { id, siteId: id, code: 'F-88123', supplierCode: 'FS-02', kind: 'film' };
