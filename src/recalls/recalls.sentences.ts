import { addSentences } from '../platform/sentences/sentences.js';

addSentences('en', {
  recall: 'recall',
  'recall-answer': 'answer of a customer',
  'recall-scope-empty':
    'Nothing falls under this recall: no bag and no pack. Nothing was opened. Check the code and the time, or choose another thing.',
  'recall-time-not-usable':
    'The time must begin before it ends: {fromAt} to {untilAt}. Enter when it began and when it ended.',
  'recall-safety-covers-possible':
    'A recall for safety covers all that is possible. Leave it at possible, or choose quality where nobody can come to harm.',
  'recall-likely-needs-reason':
    'Only what is sure and likely is to be recalled. Write down why the rest may stay, or recall all that is possible.',
  'recall-signed': 'Recall {recall} is signed. It can be read; open a new one for what came after.',
  'recall-marked-already':
    'This is recorded for recall {recall} already: {mark:recall-mark}. Go on with the next step.',
  'recall-nothing-has-no-amount':
    'The customer does not know yet, so there is no amount. Leave it empty, or choose what became of the packs.',
  'exercise-places-no-hold':
    '{recall} is an exercise and blocks nothing. If there is a danger, open a recall, or place a hold.',
  'recall-held-already': 'All that recall {recall} covers is on hold already. Go on with the customers.',
  'recall-clock-running': 'The clock of {recall} still runs. Stop it first, then sign.',
  'recall-needs-explanation':
    '{recall} does not add up: {packs} packs are unaccounted for, or the answers contradict what was sent. Look for the records, or write down what explains it, then sign.',
  'recall-mark-customers-listed': 'list of customers out',
  'recall-mark-stock-blocked': 'stock blocked',
  'recall-mark-clock-stopped': 'clock stopped',
});
