import type { WeightReportFacts } from '../../src/fill-weight/report/weight-report.facts.js';
import type { DeliveryNoteFacts } from '../../src/dispatch/delivery-note.facts.js';
import type { BagLabelFacts } from '../../src/drying/bulk-bag.label.js';
import type { LotLabelFacts } from '../../src/packing/lot.label.js';
import type { PalletLabelFacts } from '../../src/pallets/pallet.label.js';

/** Facts of papers as they were frozen before papers had a language, one of each kind, with all that it can say. */
export const noteFacts: DeliveryNoteFacts = {
  number: 'DN-2026-000471',
  version: 2,
  replaces: 'DN-2026-000470',
  sender: { name: 'Alder Quay', gln: '9520123000011' },
  customer: {
    code: 'K-001',
    gln: '9524567000019',
    name: 'Fernhill Foods',
    address: '1 Example Way\nFernhill',
  },
  orderNumber: 'PO-7788',
  plannedOn: '2026-03-12',
  leftAtLocal: 'Thu 12 Mar 2026, 08:41',
  vehicle: { registration: 'AB-123-CD', haulierCode: 'H-01', checkedAtLocal: 'Thu 12 Mar 2026, 08:02' },
  seal: '0042',
  products: [
    {
      name: 'Crystal 1 kg',
      gtin: '09520123000028',
      nominalGrams: 1000,
      lots: [
        {
          code: 'L26071A',
          bestBeforeOn: '2027-09-12',
          packCount: 1680,
          netGrams: 1_680_000,
          pallets: [
            { sscc: '095201230000000011', packCount: 840, netGrams: 840_000, grossGrams: 876_250 },
            { sscc: '095201230000000028', packCount: 840, netGrams: 840_000, grossGrams: null },
          ],
        },
      ],
    },
  ],
  bagGroups: [
    {
      grade: 'Fine',
      netGrams: 996_500,
      bags: [
        {
          number: '4188K',
          sscc: '095201230000000035',
          netGrams: 996_500,
          grossGrams: 998_300,
          tareGrams: 1800,
          isPresetTare: true,
          scaleCode: 'S1',
        },
      ],
    },
  ],
  totals: { palletCount: 2, bagCount: 1, packCount: 1680, netGrams: 2_676_500, grossGrams: 1_874_550 },
  short: [{ name: 'Crystal 1 kg', ordered: 3, loaded: 2 }],
  shortCode: 'not-enough-stock',
  shortReason: 'rest on Friday',
  remarks: 'Ring the bell',
};

export const palletFacts: PalletLabelFacts = {
  siteName: 'Alder Quay',
  siteGln: '9520123000011',
  sscc: '095201230000000011',
  gtin: '09520123000028',
  productName: 'Crystal 1 kg',
  packCount: 840,
  isFull: false,
  netGrams: 840_000,
  grossGrams: 876_250,
  builtAtLocal: 'Thu 12 Mar 2026, 07:20',
  builtOn: '2026-03-12',
  lots: [{ code: 'L26071A', packCount: 840, bestBeforeOn: '2027-09-12' }],
};

export const bagFacts: BagLabelFacts = {
  bagNumber: '4188K',
  sscc: '095201230000000035',
  siteName: 'Alder Quay',
  gradeName: 'Fine',
  originText: 'dryer run DR-2026-000012',
  netGrams: 996_500,
  grossGrams: 998_300,
  tareGrams: 1800,
  isPresetTare: true,
  isDoubtful: true,
  safeLoadGrams: 1_250_000,
  scaleCode: 'S1',
  filledAtText: 'Mon 9 Mar 2026, 22:14',
  linerLot: 'LN-77',
  copyNumber: 2,
};

export const lotFacts: LotLabelFacts = {
  siteName: 'Alder Quay',
  code: 'L26071A',
  gtin: '09520123000028',
  productName: 'Crystal 1 kg',
  bestBeforeOn: '2027-09-12',
  productionOn: '2026-03-12',
  shiftCode: 'E',
  firstPackedAtText: 'Thu 12 Mar 2026, 06:10',
  lineNames: ['Line 2'],
  runNumbers: ['PR-2026-000019'],
  copyNumber: 1,
};

/** A report of a run's weights as it was written before what the line was set to stood in it. */
export const weightReportFacts: WeightReportFacts = {
  ...{ language: 'en', siteName: 'Alder Quay', gln: '9520123000011', runNumber: 'PR-2026-000042', isOpen: false },
  ...{ issuedAtLocal: '12 Mar 2026 08:41', issuedBy: 'Person 3', verdict: 'European Union: every rule is kept.' },
  about: [{ name: 'Line', says: '1 · Line one' }],
  counts: [{ name: 'Counted', says: '1 200' }],
  markets: [
    {
      ...{ market: 'European Union', overall: 'every rule is kept' },
      ruleSets: [
        {
          title: 'Directive 76/211/EEC',
          rules: [
            { rule: 'Mean', verdict: 'kept', says: '2 003.00 g', notes: ['rests on all packs'], source: 'Annex I 1.1' },
          ],
        },
      ],
    },
    { market: 'Canada', overall: 'not judged', ruleSets: [] },
  ],
  bins: [
    { from: 1_990_000, until: 2_000_000, count: 300 },
    { from: 2_000_000, until: 2_010_000, count: 900 },
  ],
  limits: { nominal: 2_000_000, t1: 1_970_000, t2: 1_940_000, mean: 2_003_000 },
  hours: [{ cells: ['06:00', '1 200', '2 003.00', '0', '0'] }],
  shortPacks: [{ cells: ['06:12', '7', '3', '1 939.0'] }],
  shortPackCount: 1,
  tareCorrections: ['Tare corrected by 0.50 g.'],
  unreadable: ['9 single weights are damaged.'],
  damagedBlocks: [{ cells: ['0195862e', '1 to 9', '9', '', 'checksum'] }],
};
