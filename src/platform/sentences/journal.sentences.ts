import { addSentences } from './sentences.js';

addSentences('en', {
  'already-corrected': 'This record was corrected already. Open it again and look at the correction.',
});
