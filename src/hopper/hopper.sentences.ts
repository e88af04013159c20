import { addSentences } from '../platform/sentences/sentences.js';

addSentences('en', {
  hopper: 'hopper',
  tip: 'tip',
  'hopper-period': 'hopper period',
  'rework-bin': 'rework bin',
  'level-seen': 'level seen',
  'bag-already-tipped':
    'Bag {bag} was tipped already ({at}). If something is left in it, end that tip with its weight; if another bag hangs here, read its number again.',
  'tip-who': '{tippedBy} tipped it into {tippedInto} at {tippedAt}.',
  'tip-who-held': '{tippedBy} tipped it into {tippedInto} at {tippedAt}; {heldBy} put it on hold at {heldAt}.',
  'tip-who-unsaid': 'Its thread says who tipped it and when.',
  'bag-tipped-since':
    'Bag {bag} hung over {tippedInto} from {openedAt} to {offAt} by the records, and this is of {meantAt}. Correct that tip first if it is wrong, or give the right time.',
  'kept-why-bag-already-tipped':
    'Bag {bag} was tipped into {tippedInto} at {at} by {tippedBy} already, so one of the two was another bag, or the same tip was entered twice.',
  'kept-why-bag-tipped-since':
    'Bag {bag} hung over {tippedInto} from {openedAt} to {offAt} by the records ({tippedBy}), so it was another bag, or one of the two times is wrong.',
  'bag-loaded': 'Bag {bag} is on a vehicle or has left. Read its number again, or correct the loading first.',
  'bag-rejected': 'STOP: bag {bag} is rejected. Do not tip it; put it back and tell quality.',
  'bag-on-hold': 'STOP: bag {bag} is on hold ({hold}: {reason}). Do not tip it; put it back and tell quality.',
  'grade-not-taken':
    'STOP: bag {bag} is {grade}; run {run} packs {format}, which does not take it. Do not tip it; put it back.',
  'bag-waiting': 'Bag {bag} waits for quality, and {grade} is tipped only when released. Take a released bag.',
  'bag-has-bad-result':
    'A result of bag {bag} is outside its specification ({property:measured}). Take another bag and tell quality.',
  'too-much-at-risk':
    '{bagCount} {bagCount?bag that waits for results is|bags that wait for results are} tipped already; quality allows {mostWaitingBagCount} at once. Take a released bag instead of {bag}, or wait for results.',
  'bag-changed-meanwhile': 'Bag {bag} was changed by someone else just now. Look at it again.',
  'off-before-open': 'The bag can’t be off ({offAt}) before its spout was opened ({openedAt}). Correct the time.',
  'before-first-period': 'The records of hopper {hopper} begin at {startedAt}; {at} is before that. Correct the time.',
  'tip-is-off': 'The tip of {bag} ended at {at} already. Correct that record if it is wrong.',
  'rest-of-unknown-bag': 'Which bag it was is not known, so nothing can be weighed back. Say first which bag it was.',
  'rest-above-content':
    'Bag {bag} held {netGrams} g and can’t have {restGrams} g left. Read the scale again, or check the number of the bag.',
  'candidates-same': 'These are all one bag ({bag}). Name two or more that it may have been, or tip that one.',
  'second-person-same': 'The second person must be somebody else. Ask a colleague to look and name them.',
  'tip-has-no-candidates': 'It is known which bag this tip was. Correct the tip if that is wrong.',
  'not-a-candidate': 'Bag {bag} was not named as one of those that it may have been. Correct the tip instead.',
  'nothing-to-correct': 'Say what is right about the tip of {tip}: another bag or another time.',
  'tip-hangs': 'The tip of {tip} has not ended. End it instead of correcting its end.',
  'tip-has-no-bag': 'The tip of {tip} is not of a known bag, so no other bag can take its place.',
  'bag-went-on':
    'Bag {bag} is {status:bag-status} since: something was done with it after this tip. Correct that first.',
  'limits-out-of-order': 'The lower limit ({lowerGrams} g) is above the upper one ({upperGrams} g). Correct them.',
  'flow-not-stopped':
    'A hopper is looked into only with the flow stopped and the way in made safe by your local lock-out rules. Nothing was recorded.',
  'already-proven-empty': 'Hopper {hopper} was proven empty at {at}. Nothing was recorded twice.',
  'bag-hangs': 'Bag {bag} hangs over hopper {hopper} since {at}. End its tip first, then look into the hopper.',
  'empty-went-on': 'Hopper {hopper} was proven empty again at {at}. Correct that later empty first, then this one.',
  'period-on-hold':
    'Hold {hold} is on the period of hopper {hopper} that this empty began. Place it on the period before as well, lift it here, then correct the empty.',
  'empty-as-it-was': 'Say what is right about the empty of hopper {hopper}: another time or another residue.',
  'bag-across-empty':
    'Bag {bag} hung over hopper {hopper} then: it was opened at {at}. Correct its tip first, or give another time.',
  'records-after-empty':
    'Hopper {hopper} can’t have been empty then: {what:recorded} is recorded at {at}. Correct that time or give a later one.',
  'run-of-other-hopper': 'Run {run} does not draw from hopper {hopper}. Leave its count out.',
  'empty-questioned':
    'By the records hopper {hopper} is {kilograms} away from that. Look for a tip, count or removal that is missing or wrong; if it is empty all the same, send it as happened.',
  'content-never-rework': 'Never back into the product: {content:bin-content}. Book it as waste.',
  'bin-content-metal-rejects': 'metal rejects',
  'bin-content-floor-sweepings': 'floor sweepings',
  'bin-content-trade-returns': 'trade returns',
  'bin-content-unknown-product': 'unknown product',
  'recorded-level': 'a level',
  'range-not-counted':
    'Run {run} has {packCount} {packCount?pack|packs}; {fromCount} to {toCount} is no part of them. Correct the counts.',
  'bin-heavier-than-its-packs':
    'The bin weighs {netGrams} g, but the packs named as its parents hold at most about {mostGrams} g. Weigh it again, or name all its packs.',
  'bin-already-tipped': 'Rework bin {bin} was tipped already ({at}). Read its number again.',
  'bin-not-closed-then': 'Rework bin {bin} was closed at {closedAt}. Give a time after that.',
  'line-has-no-hopper': 'Line {line} is linked to no hopper at that time. Link it in the plant’s set-up first.',
  'hopper-holds-other-grade':
    'Hopper {hopper} may still hold {bagCount} {bagCount?bag|bags} of a grade that {format} does not take ({bags}). Run it down and prove it empty first.',
  'happened-bag-rejected':
    'Bag {bag} was tipped though it is rejected ({reason}). {=tipWho} Decide what happens to all it may be in.',
  'happened-bag-on-hold':
    'Bag {bag} was tipped though it is on hold ({hold}). {=tipWho} Decide what happens to all it may be in.',
  'happened-grade-not-taken':
    'Bag {bag} ({grade}) was tipped while run {run} packed {format}. {=tipWho} Decide what happens to all it may be in.',
  'happened-bag-waiting':
    'Bag {bag} was tipped before it was released. {=tipWho} Decide on it, and on all it may be in.',
  'happened-bag-has-bad-result':
    'Bag {bag} was tipped though a result is outside its specification ({property:measured}). {=tipWho} Decide on all it may be in.',
  'happened-too-much-at-risk':
    'Bag {bag} was tipped at risk beyond the limit ({bagCount} waited already). {=tipWho} Hurry its results or hold what it may be in.',
  'happened-empty-questioned':
    'Hopper {hopper} was proven empty though the records are {kilograms} away from that. Find what is missing or wrong.',
  'happened-hopper-holds-other-grade':
    'A run of {format} started while hopper {hopper} may have held {bagCount} {bagCount?bag|bags} of another grade ({bags}). Decide on its first packs.',
  'tip-of-unread-bag':
    'A bag whose number could not be read was tipped into {hopper} at {at}: one of {bags}. Find out which it was.',
  'run-down-questioned':
    'Hopper {hopper} was said to have run down at {at}, but the records are {kilograms} away from that. Find what is missing or wrong.',
  'hopper-level-impossible':
    'The records of hopper {hopper} (period {period}) can’t be true: at {at:level-since} the level was {kilograms} {what:finding}. Best explanation: {best:suspect}.',
  'level-since-the-start': 'the start of the period',
  'finding-below-zero': 'below zero',
  'finding-above-capacity': 'above the capacity',
  'finding-below-seen': 'below what was seen',
  'finding-above-seen': 'above what was seen',
  'suspect-none': 'none that is a single mistake',
  'suspect-not-named': 'a bag that can’t be named',
  'suspect-tip-late': 'the tip of {bag:suspect} ({mass}) was earlier than recorded, by {by:level-since} at the latest',
  'suspect-tip-entered-twice': 'the tip of {bag:suspect} ({mass}) was entered twice',
  'suspect-wrong-tare': 'a wrong tare of {mass}, between {after:level-since} and {by:level-since}',
  'suspect-tip-missing': 'a tip of {mass} or more is missing, between {after:level-since} and {by:level-since}',
  'suspect-tip-too-many': 'a tip too many of {mass} ({bag:suspect}), between {after:level-since} and {by:level-since}',
  'suspect-wrong-hopper':
    'a tip of {mass} ({bag:suspect}) was entered at one hopper and poured into another, between {after:level-since} and {by:level-since}',
  'suspect-empty-was-none':
    'the level or empty said before was not so: {mass} or more was still inside, between {after:level-since} and {by:level-since}',
  'suspect-exits-missing':
    'packs, rejects or sweepings of {mass} are missing, between {after:level-since} and {by:level-since}',
  'suspect-exits-too-many': 'packs or rejects of {mass} too many, between {after:level-since} and {by:level-since}',
});
