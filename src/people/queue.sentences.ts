import { addSentences } from '../platform/sentences/sentences.js';

addSentences('en', {
  'queue-needs-shared-device':
    'Entries wait only on a shared tablet or handheld that is enrolled. Sign in on one, or send this while there is a network.',
  'queue-proof-not-known':
    'This device cannot show any more whose entries wait on it. Sign in on it and send them again; nothing is lost.',
  'queue-proof-not-for-this':
    'This cannot wait on a device: it takes somebody who is signed in. Sign in and do it again.',
  'happened-at-missing': 'Say when it happened, by the clock of the device: 2026-03-12T07:41:03.412Z.',
  'entry-outside-proof':
    'It happened at {happenedAt}, but this person was signed in on the device from {issuedAt} until {signedOutAt}. Find out whose entry it is and enter it as theirs.',
});
