import { addSentences } from '../platform/sentences/sentences.js';

addSentences('en', {
  'changed-since': 'What changed since this page was made',
  'changed-since-next': 'Nothing was recorded. Look at what changed; then decide again, if it still stands.',
});
