import { addSentences } from '../platform/sentences/sentences.js';

/** What a verdict on fill weights says. */
addSentences('en', {
  'fill-verdict-kept': 'kept',
  'fill-verdict-broken': 'broken',
  'fill-verdict-not-judged': 'not judged',
  'fill-verdict-second-sample-needed': 'second sample needed',
  'fill-verdict-accepted': 'accepted',
  'fill-verdict-rejected': 'rejected',
  'fill-rule-mean': 'Mean',
  'fill-rule-beyondT1': 'Packs beyond T1',
  'fill-rule-beyondT2': 'Packs beyond T2',
  'fill-rule-beyondMav': 'Packs beyond the maximum allowable variation',
  'fill-mean-within': 'On average {packs} {packs?pack holds|packs hold} {grams} g more than the nominal quantity.',
  'fill-mean-just-within':
    'On average {packs} {packs?pack holds|packs hold} the nominal quantity and less than 0.01 g more.',
  'fill-mean-at-the-limit':
    'On average {packs} {packs?pack holds|packs hold} exactly the nominal quantity, which is enough.',
  'fill-mean-outside': 'On average {packs} {packs?pack holds|packs hold} {grams} g less than the nominal quantity.',
  'fill-mean-sample-within':
    'The mean of {packs} {packs?pack|packs} is {grams} g against the nominal quantity, and down to −{allowance} g passes.',
  'fill-mean-sample-at-the-limit':
    'The mean of {packs} {packs?pack|packs} is {grams} g against the nominal quantity, and just down to −{allowance} g passes.',
  'fill-mean-sample-outside':
    'The mean of {packs} {packs?pack|packs} is {grams} g against the nominal quantity, and only down to −{allowance} g passes.',
  'fill-mean-rests-on-shortest':
    'It passes only because one pack is so short that it widens the allowance. Take that pack for what it is, not the mean for good.',
  'fill-count-within': '{count} of {packs} {count?is|are} below {limit} g; up to {allowed} may be.',
  'fill-count-none': 'None of {packs} is below {limit} g.',
  'fill-count-at-the-limit': '{count} of {packs} {count?is|are} below {limit} g, and just as many may be.',
  'fill-count-outside': '{count} of {packs} {count?is|are} below {limit} g; only {allowed} may be.',
  'fill-count-outside-none': '{count} of {packs} {count?is|are} below {limit} g; none may be.',
  'fill-count-between':
    '{count} of {packs} {count?is|are} below {limit} g: too many to accept, too few to reject. Draw {next} more at random from the same batch and weigh them.',
  'fill-share': 'Allowed are {percent} %.',
  'fill-nothing-weighed': 'No pack was weighed.',
  'fill-bounds-kept': 'At least {least} and at most {most} of {packs} are below {limit} g; {allowed} may be.',
  'fill-bounds-broken': 'At least {least} and at most {most} of {packs} are below {limit} g; {allowed} may be.',
  'fill-bounds-not-judged':
    'At least {least} and at most {most} of {packs} are below {limit} g, and {allowed} may be. Count them from the single weights to know.',
  'fill-table-not-obtained': 'The table that says how short a pack may be was not at hand, so packs cannot be counted.',
  'fill-sample-size':
    '{packs} {packs?pack was|packs were} weighed, and this test needs {asked}. Draw and weigh the sample anew in its full size.',
  'fill-do-broken':
    'Set aside what was packed since the last good check and ask quality. The law of the country decides what may be done with it.',
  'fill-source': '{title}, {clause}',
  'fill-evidence-memory': 'Written down from memory: read it in the text in force before you rely on it.',
  'fill-evidence-computed': 'Computed from the formula of the text, not read in its table.',
  'fill-evidence-own-reading': 'Our own reading: the text gives no figure for this.',
  'fill-edition': '{title}, edition {edition}',
  'fill-edition-not-noted': '{title}, edition not noted',
  'fill-outside-below-scope': 'No rule on averages applies here below {grams} g. Other law of the country may.',
  'fill-outside-above-scope': 'No rule on averages applies here above {grams} g. Other law of the country may.',
  'fill-outside-bulk-bag':
    'A bag of {grams} g or more is weighed by itself and sold by that weight. No rule on averages applies.',
  'fill-law-caution':
    'Rules on fill weight differ by country and change. What counts is the text in force where the packs are sold.',
});
