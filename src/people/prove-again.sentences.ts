import { addSentences } from '../platform/sentences/sentences.js';

addSentences('en', {
  'proof-needed':
    'Before this is decided, show once more that it is you: on a shared tablet or handheld scan your badge and type your PIN; elsewhere type your password.',
  'proof-failed':
    'That does not prove that it is you, so nothing was decided. Try again: on a shared tablet or handheld with your own badge and your PIN, elsewhere with your password.',
});
