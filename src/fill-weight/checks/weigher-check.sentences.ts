import { addSentences } from '../../platform/sentences/sentences.js';

addSentences('en', {
  'weigher-check-not-planned':
    'Line {line} has no plan of checks of a weigher {station} then. Set it up under Set-up, Line checks, with the test packs, or name its station; then send again.',
  'weigher-check-which-plan':
    'Weigher {weigher} does not say which of the things on line {line} it checked: {stations}. Send the station, or call it {weigher} in its plan.',
  'weigher-check-of-other':
    'Check {sequence} was received before, with other readings. Where the counter began again, send with another series; a check that was received is not changed.',
  'field-not-grams': 'This takes a plain number of grams with a point, such as 2000.4: no text, and no comma.',
  'reading-expected-otherwise':
    '{piece}: the weigher expected {expectedGrams} g, the plan knows {knownGrams} g. Correct the one that is wrong, weigh the test pack again, and send.',
});
