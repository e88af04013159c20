import { addSentences } from '../platform/sentences/sentences.js';

addSentences('en', {
  'happened-scale-has-failed':
    'Sugar taken away was weighed on scale {scale}, which had failed its last check. It was recorded because it has happened. Weigh it again on a scale that passed, or judge how far the weight may be off.',
});
