import { addSentences } from '../../platform/sentences/sentences.js';

addSentences('en', {
  'run-weights-title': 'Fill weights of run {number}',
  'run-weights-samples': 'Hand samples',
  'run-weights-back': 'Back to run {number}',
  'run-weights-kept':
    '{place}: the {packs} {packs?pack|packs} that {packs?was|were} weighed {packs?keeps|keep} every rule.',
  'run-weights-broken':
    '{place}: the {packs} {packs?pack|packs} that {packs?was|were} weighed {packs?does|do} not keep: {rules}. Set them aside and ask quality.',
  'run-weights-not-judged':
    '{place}: of the {packs} {packs?pack|packs} that {packs?was|were} weighed not every rule could be judged. The lines below say why.',
  'run-weights-outside': '{place}: {why}',
  'run-weights-nothing': 'No pack of this run was weighed by a pack weigher, so no rule is judged.',
  'run-weights-nothing-do':
    'Take packs from the line at random, weigh them on a scale that is checked and in date, and enter them as a hand sample. If the line has a pack weigher, see whether it is switched on and sends.',
  'run-weights-no-sample': 'Nor was a hand sample weighed: what the packs hold is assumed.',
  'run-weights-sample':
    'The last hand sample, {at}: {packs} {packs?pack|packs}, on average {grams} g. A hand sample judges no run; it says what the packs hold on average.',
  'run-weights-open': 'The run is open: this is how it stands so far.',
  'run-weights-counted': 'Counted packs',
  'run-weights-weighed': 'Weighed packs',
  'run-weights-unweighed': 'Not weighed',
  'run-weights-rejected': 'Weighed and rejected',
  'run-weights-uncounted':
    '{count} {count?pack was|packs were} weighed beyond those counted. See whether the count is behind, or packs went over the weigher twice.',
  'run-weights-several':
    '{count} pack weighers weighed packs of this run. If one stands behind the other, each pack is counted twice here.',
  'run-weights-inspector': 'What is said here is a sum over your own weights: an inspector draws a sample and decides.',
  'run-weights-rules': 'Rules',
  'run-weights-rule': 'Rule',
  'run-weights-verdict': 'Verdict',
  'run-weights-found': 'Found and allowed',
  'run-weights-source': 'Where it stands',
  'run-weights-by-market': 'The same packs under the rules of each market',
  'run-weights-market': 'Market',
  'run-weights-market-eu': 'European Union',
  'run-weights-market-de': 'Germany',
  'run-weights-market-uk': 'United Kingdom',
  'run-weights-market-us': 'United States',
  'run-weights-market-ca': 'Canada',
  'run-weights-market-oiml-country': 'Where OIML R 87 is law',
  'run-weights-giveaway': 'Giveaway',
  'run-weights-giveaway-all': 'Of all weighed packs',
  'run-weights-giveaway-pack': 'Per pack',
  'run-weights-deviation': 'Standard deviation',
  'run-weights-lightest': 'Lightest',
  'run-weights-heaviest': 'Heaviest',
  'run-weights-giveaway-says': 'Net less nominal over all weighed packs; what short packs lack is taken off.',
  'run-weights-short-says':
    'Net less nominal over all weighed packs: below zero the packs hold less than they say. Raise the setpoint and ask quality.',
  'run-weights-histogram': 'Weights',
  'run-weights-limits-by': 'Limits and permitted counts by {law}.',
  'run-weights-no-limits': 'No rule here counts packs of this nominal quantity by T1 and T2, so no limits are drawn.',
  'run-weights-beyond-bins':
    'The outermost stretch also holds packs beyond it: the lightest has {smallest} g, the heaviest {largest} g.',
  'run-weights-hours': 'Means by the hour',
  'run-weights-one-hour': 'A chart of means needs packs of two hours.',
  'run-weights-means-says':
    'Each hour of UTC is one figure. The limits come from the steps between hours, not from the law: a signal asks what changed.',
  'run-weights-few-hours': 'From {count} hours the limits are uncertain themselves; 20 to 25 are customary.',
  'run-weights-stop': 'Stop: {reason}',
  'run-weights-tip': 'Tipped: {number}',
  'run-weights-tare': 'Tare corrected from here on: {grams} g on each net',
  'run-weights-check-passed': 'Check passed: {station}',
  'run-weights-check-failed': 'Check failed: {station}',
  'run-weights-control': 'Control chart',
  'run-weights-spread': 'How far packs of a subgroup lie apart',
  'run-weights-no-subgroups':
    'A control chart needs two subgroups of packs in a row. As long as single weights are kept it is drawn here.',
  'run-weights-subgroup':
    'A subgroup is the first {size} accepted packs in a row of every {minutes} min; rejected packs are passed over.',
  'run-weights-subgroup-heads': 'So each of the {heads} heads has its turn in it.',
  'run-weights-limits-own':
    'The control limits (dashed) come from how packs of one subgroup lie apart, about the mean of all subgroups. They are not the law’s: the thick line is the nominal quantity.',
  'run-weights-few-subgroups': 'From {count} subgroups the limits are uncertain themselves; 20 to 25 are customary.',
  'run-weights-no-signal': 'No rule finds a signal: the means vary as packs of one subgroup do.',
  'run-weights-signal': '{at}: {rule}. Ask what changed.',
  'run-weights-more-signals': '{count} earlier {count?signal stands|signals stand} in the table.',
  'run-weights-sum-quiet': 'Cumulative sum (k {allowance}, h {decision}): no lasting shift.',
  'run-weights-sum-high':
    'Cumulative sum (k {allowance}, h {decision}): seen at {at}, the mean has been higher since about {since}, near {grams} g.',
  'run-weights-sum-low':
    'Cumulative sum (k {allowance}, h {decision}): seen at {at}, the mean has been lower since about {since}, near {grams} g.',
  'run-weights-heads': 'Heads',
  'run-weights-heads-compared': 'Each head against the others together',
  'run-weights-heads-alike': 'No head fills otherwise than the others.',
  'run-weights-heads-test':
    'Welch’s t test, the risk of {percent} % shared out among the heads (Bonferroni), heads that are off set aside; less than a step of the weigher’s display is not said.',
  'run-weights-no-head':
    'Of {count} {count?pack|packs} the weigher told no head: {count?it stands|they stand} in no row.',
  'run-weights-zero-or-no-head':
    '{count} {count?pack was|packs were} kept when head 0 and no head were not yet told apart: which of the two {count?it is|they are} of nobody can say, so {count?it stands|they stand} in no row.',
  'run-weights-head': 'Head',
  'run-weights-head-beyond': 'Beyond T1',
  'run-weights-head-share': 'Share beyond T1',
  'run-weights-head-off': 'From the others (g)',
  'run-weights-head-less': 'Head {head} fills {grams} g less than the others.',
  'run-weights-head-more': 'Head {head} fills {grams} g more than the others.',
  'run-weights-unreadable': 'Weights that cannot be read',
  'run-weights-unreadable-says':
    'The sums above still hold them. Charts of single weights and heads are drawn without them.',
  'run-weights-block': 'Block',
  'run-weights-sequences': 'Sequences',
  'run-weights-why': 'Why',
  'run-weights-damaged': 'Damaged blocks',
  'run-weights-dropped-says': '{count} single {count?weight was|weights were} dropped after their time, by order.',
  'run-weights-damaged-says':
    '{count} single {count?weight is|weights are} damaged. Look for a backup that is older than the damage.',
  'run-weights-more-blocks': '{count} more damaged {count?block is|blocks are} not listed here.',
  'weights-damage-too-short': 'fewer bytes than any block has',
  'weights-damage-unknown-version': 'written by a later edition of the format',
  'weights-damage-wrong-checksum': 'not the bytes that were written',
  'weights-damage-runs-past-its-end': 'says more than it holds',
  'weights-damage-bytes-left-over': 'holds bytes that nothing speaks of',
  'weights-damage-impossible-value': 'holds a value that cannot be',
});
