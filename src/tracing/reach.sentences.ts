import { addSentences } from '../platform/sentences/sentences.js';

addSentences('en', {
  'bag-reach-days-turned-round': 'The last day ({until}) lies before the first ({from}). Enter the earlier day first.',
  'bag-reach-too-long': 'No more than {days} days are read at once. Choose a shorter time.',
  'bag-reach-title': 'How far one bag reaches',
  'bag-reach-says':
    'If a bag were bad, how much would have to come back? All packs that may hold some of it, whatever the hopper did.',
  'bag-reach-from': 'First production day',
  'bag-reach-until': 'Last production day',
  'bag-reach-look': 'Look',
  'bag-reach-no-bags': 'No bag was tipped on these days.',
  'bag-reach-answer': 'A bag reached {mean} t on average, {worst} t at worst.',
  'bag-reach-with-empties':
    'Had every hopper been run empty and proven so at each change of shift ({empties} {empties?time|times} more), it would have been {less} t on average: {percent} % less.',
  'bag-reach-sum': 'The sum behind it, t',
  'bag-reach-case': 'How',
  'bag-reach-total': 'All bags together',
  'bag-reach-bags': 'Bags tipped',
  'bag-reach-mean': 'A bag on average',
  'bag-reach-worst': 'A bag at worst',
  'bag-reach-as-is': 'As recorded',
  'bag-reach-had-empties': 'With {empties} more {empties?empty|empties}',
  'bag-reach-how':
    'A pack that may hold several bags counts for each of them; so the bags together reach more than was packed. The same bags and packs are taken in the same order: at each empty tipping waits until what is inside has been packed. Time that this would cost is not counted.',
  'bag-reach-worst-bags': 'The bags that reached furthest',
  'bag-reach-bag': 'Bag',
  'bag-reach-tonnes': 'May be in, t',
  'bag-reach-if-bad': 'If this bag were bad',
  'bag-reach-nowhere': 'Nothing of it can be in any pack.',
  'bag-reach-possible': 'Packs that may hold some of it',
  'bag-reach-lots': 'Lots',
  'bag-reach-pallets': 'Pallets',
  'bag-reach-customers': 'Customers',
  'bag-reach-lot-codes': 'Lots:',
  'bag-reach-whole-lots': 'Recalled whole, these lots are {packs} {packs?pack|packs} or {tonnes} t.',
  'bag-reach-where':
    '{packs} {packs?pack|packs} may hold some of it. Of the pallets {here} are here, {loaded} on a vehicle, {away} gone.',
  'bag-reach-customer': '{customer}: {pallets} {pallets?pallet|pallets}, {packs} {packs?pack|packs} ({deliveries})',
  'desk-to-reach': 'How far one bag reaches',
});
