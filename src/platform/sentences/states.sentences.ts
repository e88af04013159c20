import { addSentences } from './sentences.js';

addSentences('en', {
  'state-waiting': 'Waiting',
  'state-released': 'Released',
  'state-on-hold': 'On hold',
  'state-rejected': 'Rejected',
  'state-concession': 'Concession',
  'state-doubtful': 'Check',
});
