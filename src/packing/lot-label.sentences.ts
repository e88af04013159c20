import { addSentences } from '../platform/sentences/sentences.js';

/** What stands on the card of a lot. Cards that were printed keep their bytes; `test/paper-editions.spec.ts` keeps their words. */
addSentences('en', {
  'lot-label-lot': 'LOT',
  'lot-label-copy': 'COPY {number}',
  'lot-label-best-before': 'BEST BEFORE {day}',
  'lot-label-shift': 'Packing shift {day} {shift}',
  'lot-label-first': 'First packs {at}',
  'lot-label-runs': 'Runs {runs}',
  'lot-label-state': 'This card promises no state: look the lot up before use.',
});
