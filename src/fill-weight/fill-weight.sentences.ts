import { addSentences } from '../platform/sentences/sentences.js';

addSentences('en', {
  'hand-sample': 'hand sample',
  'net-far-from-nominal':
    'Pack {pack} of the sample weighs {grams} g, more than {percent} % off the nominal {nominalGrams} g. Weigh it again; look whether gross was read for net, or whether it is of another format.',
});
