import { addSentences } from '../../platform/sentences/sentences.js';

addSentences('en', {
  'weigher-silence': 'silence of a pack weigher',
  'weigher-silent':
    'Line {line}, run {run}: no weights from {weigher} since {at}, and {count} {count?pack was|packs were} counted that nobody weighed. See whether the weigher is switched on and sends; until it does, weigh samples by hand.',
  'verified-all': 'All counted packs were weighed: {counted}.',
  'verified-some':
    'Of {counted} counted {counted?pack|packs}, {verified} {verified?is|are} verified by weight and {count} {count?is|are} unverified.',
  'unverified-do':
    '{count} counted {count?pack was|packs were} not weighed. The verdict is not about {count?it|them}: have the weigher send what it kept, weigh a hand sample of what is still here, or have quality decide.',
  'unverified-may-be-more':
    '{count} {count?pack was|packs were} taken out by hand. If they had been weighed before, and are not in the count, as many more may be unverified.',
  'silences-caption': 'When no weights came while packs were counted',
  'silence-weigher': 'Weigher',
  'silence-since': 'Last weight',
  'silence-until': 'Until',
  'silence-counted': 'Counted packs',
  'silence-weighed': 'Weighed by now',
  'silence-unverified': 'Unverified',
  'silence-lasts': 'still silent',
  'silence-come': 'none: the weights came late',
  'silences-say':
    'Counts reach from the last one before the silence to the first one after it. Weights that come late count.',
});
