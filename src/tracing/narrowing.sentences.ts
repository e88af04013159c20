import { addSentences } from '../platform/sentences/sentences.js';

addSentences('en', {
  'assessment-needed':
    '{hold} is a safety hold. Write the assessment too: why these parts can do no harm, and what was looked at.',
  'nothing-to-take-out': 'Nothing is chosen. Choose what is to be taken out of the hold.',
  'minutes-turned-round': 'The minutes end before they begin. Enter the earlier time first.',
  'part-not-reached': 'Hold {hold} does not reach {unit}. Look at the hold again and choose from what it reaches now.',
  'part-is-the-hold': 'Hold {hold} is on {unit} itself. Lift the hold instead of narrowing it to nothing.',
  'no-pack-in-these-minutes':
    'No pack of {unit} was surely packed in these minutes, by its counts. Choose a longer time, or the pallets.',
  'held-after-leaving':
    'By a correction, hold {hold} now reaches {unit}, which is on the vehicle of delivery {delivery} or has left on it, for {customer}. Look at the hold, stop the vehicle or tell the customer, and answer here what was done.',
  'held-unit': 'unit reached by a hold',
  'hold-narrowing': 'narrowing of a hold',
});
