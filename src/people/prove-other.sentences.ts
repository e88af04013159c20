import { addSentences } from '../platform/sentences/sentences.js';

addSentences('en', {
  'other-proof-needed':
    'The second person shows who they are: on a shared tablet or handheld by badge, or name and PIN; elsewhere by code and password.',
  'other-proof-failed': 'That proves nobody, so nothing was signed. The second person tries again, or sign alone.',
  'other-is-same': 'The second person must be somebody else. Ask a colleague to show their own badge or PIN.',
});
