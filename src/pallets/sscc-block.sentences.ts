import { addSentences } from '../platform/sentences/sentences.js';

addSentences('en', {
  'form-the 18 digits of an SSCC': 'the 18 digits of an SSCC',
  'sscc-block': 'block of pallet numbers',
  'block-needs-device':
    'Numbers are set aside for an enrolled device only, and this is none. Build the pallet here while there is a network: it gets the next number.',
  'sscc-not-set-aside':
    'The number {sscc} was not set aside for anything. Read it again from the label or sheet; a pallet without a number gets the next one.',
  'sscc-of-another':
    'The number {sscc} was set aside for another device or sheet. Read it again; a pallet without a number gets the next one.',
  'sscc-used-already':
    'The number {sscc} is a pallet’s already, and one number is used once. Read it again; give this pallet another number.',
  'pallet-came-out-of-order':
    'Pallet {pallet} was built at {builtAt} but came in after pallet {other}, built at {otherBuiltAt}. Look at the printed codes which packs stand on which, and correct the pallets where they are swapped.',
});
