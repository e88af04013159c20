import { addSentences } from '../platform/sentences/sentences.js';

addSentences('en', {
  'hand-sample': 'hand sample',
  'net-far-from-nominal':
    'Pack {pack} of the sample weighs {grams} g, more than {percent} % off the nominal {nominalGrams} g. Weigh it again; look whether gross was read for net, or whether it is of another format.',
  'sample-in-kilograms':
    'The packs of the sample weigh about {grams} g where {nominalGrams} g is nominal: they look like kilograms. Enter grams.',
  'pack-weigher': 'pack weigher',
  'device-is-no-machine':
    '{device} is no machine: people work on it. Add a machine under devices and set up that one as the pack weigher.',
  'machine-weighs-already':
    'The machine {device} is the pack weigher {weigher} already. Withdraw that one first, or choose another machine.',
  'tare-correction': 'tare correction',
  'nothing-to-add':
    'A correction by 0 mg changes nothing. Give what is to be added to each net, below zero where packs were tared too lightly.',
  'no-weights-in-range':
    'Run {run} has no weights of that weigher and counter from {from} to {to}. Look up the range on the run and give it again.',
  'weights-not-readable':
    'Single weights of run {run} were dropped or are damaged, so its sums cannot be worked out anew. Note the correction on the run instead.',
  'weights-too-young':
    'Single weights are kept until they are from before {before}. Give that instant or an earlier one, or have the setting WEIGHT_MONTHS changed.',
});
