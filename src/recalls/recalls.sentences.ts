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
    '{recall} does not add up: {packs} {packs?pack is|packs are} unaccounted for, or the answers contradict what was sent. Look for the records, or write down what explains it, then sign.',
  'recall-mark-customers-listed': 'list of customers out',
  'recall-mark-stock-blocked': 'stock blocked',
  'recall-mark-clock-stopped': 'clock stopped',
  'recall-report-recall': 'Recall report',
  'recall-report-exercise': 'Report of a recall exercise',
  'recall-report-is-exercise': 'EXERCISE – no goods are recalled',
  'recall-report-answer':
    '{scope}: {packs} packs with {kilograms} kg of sugar. {dispatched} packs went to customers ({customers}), {held} can be blocked here, {unaccounted} are unaccounted for. It took {minutes} min.',
  'recall-report-says':
    '{scope}: {packs} {packs?pack|packs} with {kilograms} kg of sugar. {dispatched} {dispatched?pack|packs} went to customers ({customers}), {held} can be blocked here, {unaccounted} {unaccounted?is|are} unaccounted for. It took {minutes} min.',
  'recall-report-left-out':
    'Drawn are the {drawn} hopper periods that most of it came through. {count} more {count?has|have} no picture: {count?its|their} bags stand in the table of bags and in the CSV file of all links, with all their kilograms.',
  'recall-report-scope': 'Scope and clock',
  'recall-report-safety': 'For safety: {reason}',
  'recall-report-quality': 'For quality: {reason}',
  'recall-report-possible':
    'Covers all that is possible: every pack that the records do not rule out, however the hopper flowed.',
  'recall-report-likely': 'Covers only what is sure and likely. Why the rest may stay: {reason}',
  'recall-report-not-stated': 'not stated',
  'recall-report-clock':
    'Clock started {started} by {by}; first list of customers {listed}; stock blocked {blocked}; clock stopped {stopped}.',
  'recall-report-balance': 'Balance',
  'recall-report-sums': 'Produced and where it is',
  'recall-report-no-share': '–',
  'recall-report-shares':
    'Accounted for {accounted} % of produced. Recovered (returned or destroyed at the customer) {recovered} % of dispatched. Closed out (these and confirmed sold) {closed} % of dispatched. In packs.',
  'recall-report-over': 'Recalled sugar is {factor} times that of the bags in question.',
  'recall-report-assumed': 'Some packs were never weighed: their nominal quantity stands for them.',
  'recall-report-explained': 'What does not add up, in the words of who signs: {words}',
  'recall-report-where': 'Where it is now',
  'recall-report-customers': 'Customers to tell',
  'recall-report-bags': 'Bags that may be in it',
  'recall-report-events': 'Stops, rejects, samples and packaging lots meanwhile',
  'recall-report-corrections': 'Corrections and late entries that touch it',
  'recall-report-records': 'Records that belong in the file',
  'recall-report-none': 'None.',
  'recall-report-sign': 'Signed',
  'recall-report-signed': 'Signed by {who}, {at}.',
  'recall-report-hashes': 'Content {content}; head of the journal {head}.',
  'recall-report-law':
    'Whom to notify, how and how fast, is set by the law of the country and by customers’ contracts: follow the local rules.',
  'recall-report-as-at': 'data as at {at} · {hash}',
  'recall-part-inStore': 'In store',
  'recall-part-onDock': 'At the dock',
  'recall-part-onVehicle': 'On a vehicle that has not left',
  'recall-part-dispatched': 'Dispatched (with what came back since)',
  'recall-part-rejects': 'Used up: rejects',
  'recall-part-samples': 'Used up: samples',
  'recall-part-retained': 'Used up: retained samples',
  'recall-part-scrapped': 'Used up: sweepings and scrap',
  'recall-part-unaccounted': 'Unaccounted (the difference)',
  'recall-part-produced': 'Produced',
  'recall-bar-produced': 'produced',
  'recall-bar-held': 'held here',
  'recall-bar-dispatched': 'dispatched',
  'recall-bar-used-up': 'used up',
  'recall-bar-unaccounted': 'unaccounted',
  'recall-place-in-store': 'in store',
  'recall-place-on-dock': 'at the dock',
  'recall-place-on-vehicle': 'on a vehicle',
  'recall-place-dispatched': 'gone',
});
