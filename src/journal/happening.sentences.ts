import { addSentences } from '../platform/sentences/sentences.js';

addSentences('en', {
  'paper-row-keyed':
    'Row {row} of sheet {sheet} was keyed in already: {what:action}, {at}. One row gives one entry. Look whether it is right; if it is not, correct that entry.',
});
