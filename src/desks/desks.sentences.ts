import { addSentences } from '../platform/sentences/sentences.js';

addSentences('en', {
  'search-title': 'Where did it come from, and where did it go?',
  'search-label': 'Scan or type any code',
  'search-button': 'Follow it',
  'search-hint':
    'A code off a pack, with or without its time · a bag’s number · an SSCC · a GS1 symbol · a delivery note or order · a complaint · a film or liner lot · a run. Spaces do not matter; O, I and B pass for 0, 1 and 8 where only a digit can stand.',
  'home-desks': 'Desks',
  'search-which': '“{code}” fits several things. Which one do you have in your hand?',
  code: 'thing with the code',
  'thread-kind': 'kind of thread',
  'search-more': 'Only the latest {count} are shown. Type more of the code.',
  'code-time-impossible':
    '“{at}” is no time of day: hours go to 23, minutes to 59. Read it again off the pack, or leave the time out.',
  'fits-code': 'its code reads so',
  'fits-pattern': 'read by the code pattern of {format}',
  'fits-look-alike': '{typed} at place {place} read as {read}',
  'fits-begins': 'its code begins so',
  'fits-inside': 'its code has this in it',
  'fits-item': 'item and lot of the symbol',
  'fits-item-only': 'the symbol names the item and no lot: one of its latest lots',
  'fits-sscc': 'its SSCC',
  'fits-bag-number': 'its number',
  'fits-note': 'the number of its delivery note',
  'fits-order': 'the customer’s order number',
  'fits-film': 'the code of the roll or its lot',
  'fits-liner': 'the lot of bag or liner of {count} {count?bulk bag|bulk bags}',
  'fits-run': 'the number of the run',
  'fits-id': 'its own id',
  'fits-complaint': 'the number of the complaint',
  'fits-coming': 'the time as it came at {at}',
  'fits-any-coming': 'the time came {count} times, and nobody can tell which',
  'fits-time-not-printed':
    'no pack of it can carry {at}: it was packed from {from} to {until}. Read the time again, or take the whole lot',
  'fits-not-counted': 'no pack of it is counted yet, so nothing is known of {at}: the whole lot',
});
