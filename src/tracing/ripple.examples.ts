const id = '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10';
const content = { byGrams: 300_000, sources: [] };

/** What a preview looks like, for the description of the API. */
export const rippleExample = {
  mark: '4711.5f70bf18a0860070',
  lots: [{ lotId: id, code: 'L6071A1', packCountBefore: 1260, packCountAfter: 1260, ...content }],
  pallets: [
    {
      ...{ palletId: id, sscc: '095201230000000011', status: 'dispatched', isGone: true, placeCode: null },
      ...{ deliveryId: id, deliveryNumber: 'DN-2026-000007', customerName: 'Harbour Grocers' },
      ...{ packsBefore: ['PR-2026-000042 1–420'], packsAfter: ['PR-2026-000042 1–420'] },
      ...{ lotCodesBefore: ['L6071A1'], lotCodesAfter: ['L6071A1'], filmCodesBefore: [], filmCodesAfter: [] },
      ...{ heldBy: ['HO-2026-000012'], freedOf: [], ...content },
    },
  ],
  deliveries: [
    { deliveryId: id, number: 'DN-2026-000007', customerName: 'Harbour Grocers', isGone: true, palletCount: 1 },
  ],
  holds: [{ number: 'HO-2026-000012', reaches: ['095201230000000011'], leaves: [] }],
  bags: [
    {
      ...{ bagId: id, number: 'B0012344', statusBefore: 'full', statusAfter: 'empty' },
      ...{ remainingGramsBefore: 1_000_000, remainingGramsAfter: 0 },
    },
  ],
  readings: [],
  byGrams: 300_000,
};
