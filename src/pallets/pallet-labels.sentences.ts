import { addSentences } from '../platform/sentences/sentences.js';

addSentences('en', {
  'label-of-another-pallet':
    'This is the label of pallet {other}; the one just built is {pallet}. Take it off, put the right one on, and scan that. If both stick already, say that the two labels were swapped.',
  'pack-of-another-lot':
    'Pack {pack} is of no lot on pallet {pallet} ({lots}). Scan a pack of this pallet; if it is one, stop and look which pallet wears this label.',
  'label-not-scanned-back':
    'The label of pallet {pallet} was printed and not scanned back on it. Go to the pallet and scan its label.',
  'swap-of-other-formats':
    'Pallets {one} ({oneFormat}) and {other} ({otherFormat}) are of two formats. Give each a new label by its page instead.',
  'labels-swapped-loaded':
    'The labels of pallets {pallet} and {other} were swapped, and {pallet} is on a vehicle or has left. Look at its delivery, correct the papers, and tell the customer.',
  'labels-swapped-held':
    'The labels of pallet {pallet} and another were swapped, and it is on hold. Look whether the hold is on the right pallet.',
});
