import { addSentences } from '../platform/sentences/sentences.js';

addSentences('en', {
  'bulk-bag': 'bulk bag',
  'dryer-run': 'dryer run',
  'goods-receipt': 'receipt',
  'bag-weighing': 'weighing',
  'dryer-has-open-run': 'Dryer {dryer} is in run {run} still. End that run first.',
  'time-before-last-run-end': 'Run {run} of this dryer ended at {endedAt}. Give a start at or after that.',
  'dryer-run-ended': 'Run {run} ended at {endedAt}. Use the run that was open at the time, or correct the time.',
  'time-before-run': 'Run {run} began at {startedAt}. Correct the time, or use the run before.',
  'bags-begun-later': 'Bag {bag} of run {run} was begun at or after {endedAt}. Give a later end, or correct the bag.',
  'time-before-fill-start': 'Filling of bag {bag} began at {startedAt}. Its end can’t be earlier: correct the time.',
  'time-before-fill-end': 'Bag {bag} was filled at {filledAt}. Give a time after that.',
  'bag-already-closed':
    'Bag {bag} is closed and weighed already. Weigh it again if the weight is in doubt, or correct the weighing.',
  'bag-not-closed': 'Bag {bag} is being filled still. Close it with its weights first.',
  'gross-below-tare': 'Gross ({grossGrams} g) is below tare ({tareGrams} g). Read the scale again.',
  'net-not-above-zero': 'Gross and tare are the same ({grossGrams} g): nothing is in bag {bag}. Read the scale again.',
  'over-safe-load':
    'Bag {bag} would weigh {grossGrams} g with its own weight, above its safe load of {safeLoadGrams} g. Do not lift it; take sugar out and weigh it again.',
  'bag-not-full':
    'Bag {bag} is {status:bag-status}. Only a full bag is weighed again; a part bag is weighed back when its tip ends.',
  'bag-not-in-store': 'Bag {bag} is {status:bag-status} and can’t be moved. Full and opened bags can.',
  'bag-already-there': 'Bag {bag} is at {place} already.',
  'bag-in-use': 'Bag {bag} is {status:bag-status}: sugar of it went on. Correct those records first.',
  'bag-needs-its-weight':
    'Bag {bag} can’t be without this weighing: it went on, or was weighed again. Give the right weights instead.',
  'bag-changed-meanwhile': 'Bag {bag} was changed by someone else just now. Look at it again.',
  'weigh-back-belongs-to-tip': 'This weighing of bag {bag} ended a tip. Correct the tip instead.',
  'nothing-corrected': 'Say what is right: give at least one of gross, tare, scale or time.',
  'receipt-already-recorded': 'Document {document} with this lot is recorded as {receipt}. Nothing was recorded twice.',
  'opening-stock-too-late':
    'Opening stock is what was there before {first} ({beganAt}). Record these bags as a receipt or by their dryer run.',
  'sscc-not-valid': '{sscc} is no SSCC: its check digit is wrong. Scan it again.',
  'sscc-is-ours': '{sscc} belongs to this site’s own series. Leave it out, and the bag gets a new number.',
  'sscc-taken': '{sscc} is bag {bag} already.',
  'label-printed-already':
    'Bag {bag} has {copies} {copies?label|labels} already. Say why another is needed; it will say COPY.',
  'weighed-on-doubtful-scale':
    'Bag {bag} was weighed on a scale that was overdue for its check or had failed it. It may be tipped, not sold: weigh it again on a good scale.',
  'filled-over-safe-load':
    'Bag {bag} is heavier than its safe load. Keep people away, do not lift it; take sugar out by a safe way and weigh it again.',
  'weight-corrected-after-tip':
    'The weight of bag {bag} was corrected after sugar of it was tipped. Look at the tips and accounts that used the old one.',
  'weight-corrected-after-loading':
    'The weight of bag {bag} was corrected after it was loaded. Look at the delivery note and tell the customer.',
});
