import { addSentences } from '../platform/sentences/sentences.js';

addSentences('en', {
  'hand-sample': 'hand sample',
  'net-far-from-nominal':
    'Pack {pack} of the sample weighs {grams} g, more than {percent} % off the nominal {nominalGrams} g. Weigh it again; look whether gross was read for net, or whether it is of another format.',
  'pack-weigher': 'pack weigher',
  'device-is-no-machine':
    '{device} is no machine: people work on it. Add a machine under devices and set up that one as the pack weigher.',
  'machine-weighs-already':
    'The machine {device} is the pack weigher {weigher} already. Withdraw that one first, or choose another machine.',
});
