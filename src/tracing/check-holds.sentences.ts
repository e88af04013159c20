import { addSentences } from '../platform/sentences/sentences.js';

addSentences('en', {
  'check-not-failed':
    'The check of {station} did not fail, or was taken back: there is nothing to hold. Look at the check again.',
  'nothing-packed-since': 'Nothing was packed since the last good check of {station}. There is nothing to hold.',
  'suspects-held-already': 'All of it is on hold already ({hold}). Nothing to do.',
  'held-since-last-good': 'Line {line}: check of {station} failed at {at}; last good check at {lastGoodAt}',
  'held-since-first': 'Line {line}: check of {station} failed at {at}; no good check before it',
  'held-torn-bag': 'Line {line}: bag torn, or its seal ({station}), seen at {at}',
});
