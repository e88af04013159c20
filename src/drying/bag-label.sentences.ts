import { addSentences } from '../platform/sentences/sentences.js';

/** What stands on the label of a bulk bag. Labels that were printed keep their bytes; `test/paper-editions.spec.ts` keeps their words. */
addSentences('en', {
  'bag-label-title': 'Bag {bag}',
  'bag-label-bag': 'BAG',
  'bag-label-copy': 'COPY {number}',
  'bag-label-net': 'NET {kilograms}',
  'bag-label-gross': 'gross {kilograms}',
  'bag-label-tare': 'tare {kilograms}',
  'bag-label-preset': 'PT (preset tare)',
  'bag-label-scale': 'scale {scale}',
  'bag-label-safe-load': 'safe load {kilograms}',
  'bag-label-liner': 'liner lot {lot}',
  'bag-label-doubtful': 'WEIGHT DOUBTFUL: not for sale by weight',
  'bag-label-state': 'This label promises no state: look the bag up before use.',
  'bag-label-opened': 'opened on',
  'bag-label-rest': 'rest kg',
  'bag-label-caution':
    'Hanging load: nobody under or beside the bag. Lift by all loops, never above the safe load. Local rules go first.',
  'bag-label-tear-off': 'Tear off at the hoist; stays with the tip sheet.',
  'bag-label-of-run': 'dryer run {run}',
  'bag-label-of-opening': 'opening stock',
  'bag-label-of-receipt': '{lot} of {supplier} · {receipt}',
});
