import { addSentences } from '../platform/sentences/sentences.js';

addSentences('en', {
  'paper-row-keyed':
    'Row {row} of sheet {sheet} was keyed in already, and one row gives one entry of a kind. Look whether it is right; if it is not, correct that entry.',
});
