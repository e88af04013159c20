import { addSentences } from '../platform/sentences/sentences.js';

addSentences('en', {
  'correction-contradicts-itself':
    'It did not happen, or this was wrong in it: only one can be. Leave this empty, or say that something in it was wrong.',
  'already-corrected': 'This record was corrected already. Open it again and look at the correction.',
  thing: 'thing of the journal',
  'journal-title': 'Journal',
  'journal-says':
    'Every accepted change, as it was recorded. Nothing here can be changed; each entry carries the hash of the one before it. People stand here by id only.',
  'journal-caption': '{count} {count?entry|entries}, newest first',
  'journal-sequence': 'No.',
  'journal-recorded': 'Recorded',
  'journal-what': 'What',
  'journal-before-after': 'Content',
  'journal-who': 'Who',
  'journal-happened': 'happened {at}',
  'journal-reason': 'Reason: {reason}',
  'journal-before': 'Before: {content}',
  'journal-house': 'the house',
});
