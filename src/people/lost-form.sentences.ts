import { addSentences } from '../platform/sentences/sentences.js';

addSentences('en', {
  'lost-form-signed-out': 'You were signed out meanwhile. Sign in; what you entered is kept and can be sent then.',
  'lost-form-title': 'Not sent yet',
  'lost-form-says':
    'This was entered before the session was over, and nothing of it was recorded. Look at it, then send it as your own entry, or leave it.',
  'lost-form-send': 'Send it now',
  'lost-form-leave': 'Leave it and go on',
});
