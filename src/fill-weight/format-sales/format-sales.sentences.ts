import { addSentences } from '../../platform/sentences/sentences.js';

addSentences('en', {
  'sold-nowhere': 'Choose at least one market in which {format} is sold.',
  'market-twice': 'A market stands twice: {markets}. Name each once.',
  'currency-without-price':
    'The currency {currency} says nothing without a price of a kilogram. Give the price too, or leave both out.',
  'form-currency': 'three letters of ISO 4217, such as EUR',
  'said-sale-set': 'Recorded where the format is sold.',
  'sale-title': 'Markets and prices of pack formats',
  'sale-says':
    'By these rules a run is shown first, reported in full, and advised on, and by this price giveaway is said in money. Where nothing is said, the European Union is shown and no money.',
  'sale-list': 'Where formats are sold now',
  'sale-format': 'Pack format',
  'sale-markets': 'Sold in',
  'sale-since': 'Since when',
  'sale-since-hint': 'Empty: now. Only the first for a format may begin in the past.',
  'sale-not-said': 'nobody said',
  'sale-no-formats': 'no format is set up yet',
  'sale-set': 'Say where a format is sold',
  'sale-to-set-up': 'To the set-up',
  'step-sales': 'Markets and prices',
  'step-sales-says': 'where each format is sold, and what a kilogram is worth',
  'sale-currency-hint': 'Three letters, such as EUR. Empty: amounts are shown without a currency.',
  'field-name-currency': 'Currency of the price',
  'journal-name-currency': 'currency',
  'field-name-markets': 'Sold in',
  'journal-name-markets': 'markets',
  'sale-of-run': 'Sold in: {markets}.',
  'sale-of-run-not-said': 'Nobody said where this format is sold; the European Union is shown.',
  'sale-link': 'Markets and prices',
  'run-weights-giveaway-money': 'Giveaway of all packs in money',
  'run-weights-priced': 'At {price} a kilogram, as set up for this format since {since}.',
  'weight-report-sold': 'Sold in',
  'weight-report-sold-says': '{markets}',
  'weight-report-sold-not-said':
    'not recorded; the rules of the European Union and the United States are printed in full',
});
