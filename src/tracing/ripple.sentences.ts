import { addSentences } from '../platform/sentences/sentences.js';

addSentences('en', {
  'look-first':
    'Others have recorded later things meanwhile, which this may change. Look at what it changes, then record it.',
  'ripple-title': 'What this changes',
  'ripple-nothing-yet': 'Nothing is recorded yet.',
  'ripple-act': 'Record it',
  'ripple-back': 'Do not record it',
  'ripple-nothing': 'This changes no lot, no pallet and no delivery.',
  'ripple-changes':
    'This changes lots: {lots}; pallets: {pallets}; deliveries already gone: {gone}; deliveries still here: {here}.',
  'ripple-by': 'What one bag can have in one of them changes by {kilograms} kg at most.',
  'ripple-by-nothing': 'No kilograms of any bag change in them.',
  'ripple-bag': 'Bulk bag {bag}: {before} → {after}.',
  'ripple-bag-none': 'not there',
  'ripple-holds': 'Holds',
  'ripple-hold-reaches': 'Hold {hold} newly reaches {count}:',
  'ripple-hold-leaves': 'Hold {hold} no longer reaches {count}:',
  'ripple-and-more': 'and {count} more',
  'ripple-more-pallets': 'And {count} more {count?pallet|pallets}.',
  'ripple-lots': 'Lots that change',
  'ripple-lot': 'Lot',
  'ripple-film': 'Film lot',
  'ripple-packs': 'Packs',
  'ripple-by-head': 'Changes by at most, kg',
  'ripple-sources': 'What changes',
  'ripple-pallets': 'Pallets that change',
  'ripple-pallet': 'Pallet',
  'ripple-where': 'Where it is',
  'ripple-from-to': '{before} → {after}',
  'ripple-none': 'none',
  'ripple-ruled-out': 'ruled out',
  'ripple-amounts': '{word}, {likely} kg ({least} to {most})',
  'ripple-reading':
    'Coder {coder} of line {line}: codes that show {shownFrom} to {shownUntil} are read as packed {from} to {until}, within {uncertainty} s; until now as packed {wasFrom} to {wasUntil}, within {wasUncertainty} s.',
  'ripple-reading-on':
    'Coder {coder} of line {line}: codes that show {shownFrom} or later are read as packed from {from} on, within {uncertainty} s; until now as packed from {wasFrom} on, within {wasUncertainty} s.',
  'ripple-reread': 'What the times on its packs mean',
});
