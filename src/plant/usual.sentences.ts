import { addSentences } from '../platform/sentences/sentences.js';

addSentences('en', {
  'bag-type': 'type of bag',
  'tare-band-crossed':
    'The usual tare ({usual} g) must lie between the lightest ({least} g) and the heaviest ({most} g). Correct the three.',
  'tare-above-safe-load':
    'An empty bag of {most} g cannot be above its own safe load of {safeLoadGrams} g. Read the maker’s label again.',
  'usual-net-crossed': 'The lightest usual net ({least} g) is above the heaviest ({most} g). Correct the two.',
  'site-in-use':
    'Numbers were given out already ({series}), and papers carry them: time zone, production day and GS1 numbers of this site stay. Only its name may change.',
  'shifts-begin-otherwise':
    'The shifts begin with the production day at {start}. Leave the production day so; new shifts may divide it otherwise.',
  'rules-there-already':
    'These rules have been set since {since}. A quality officer sets later ones; nothing was changed.',
});
