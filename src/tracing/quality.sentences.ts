import { addSentences } from '../platform/sentences/sentences.js';

addSentences('en', {
  'quality-caption': 'Calculated, not tested: what it should be like',
  'quality-property': 'Property',
  'quality-value': 'Calculated',
  'quality-range': 'However the hopper flows',
  'quality-method': 'Method of its bags',
  'quality-basis': 'How surely',
  'quality-with-doubt': '{value} ± {standard}',
  'quality-between': '{lowest} to {highest}',
  'quality-range-not-known': 'not known: a bag that may be in it has no result',
  'quality-doubt-by-repeats':
    '± one standard uncertainty, by {count} {count?repeat|repeats} of the laboratory; not in it: what the method makes all results off by, and the hopper',
  'quality-doubt-not-known': 'Uncertainty not known: too few samples were analysed again lately',
  'quality-says':
    'The mean of the bags’ results by likely mass. It shows where to look and is no test: never put it on a certificate or a label as one.',
  'quality-nothing-inside': 'Nothing of its bags is likely in it',
  'quality-methods-differ': 'Its bags were tested by methods that can’t be averaged: {methods}',
  'quality-results-missing':
    '{percent} % of it has no result yet: {bags} (and {more} more). Wait for these, or have it tested',
  'quality-no-blend-spreads-add':
    'Not calculated: the spreads of the bags add to the spread of their means, so it has to be sieved',
  'quality-no-blend-not-proportional': 'Not calculated: it does not follow the mass, so it has to be measured',
  'quality-no-blend-counted-apart':
    'Not calculated: few single things are not spread evenly, so they have to be counted',
  'quality-no-blend-not-known': 'Not calculated: nobody has said that it blends by mass, so it has to be measured',
});
