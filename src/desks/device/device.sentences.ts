import { addSentences } from '../../platform/sentences/sentences.js';

addSentences('en', {
  'way-this-device': 'This device',
  'device-title': 'This device',
  'device-is': 'This is {code}.',
  'device-not-enrolled-here': 'This device is not enrolled: people sign in on it by code and password alone.',
  'device-queue': 'What waits on it',
  'device-size': 'Size of the screen',
  'device-scanner': 'Try the scanner',
  'device-back': 'This device',
  'queue-title': 'Entries on this device',
  'queue-says':
    'What was entered here is kept until the server has accepted it, whoever entered it. It is sent in order, by itself.',
  'queue-none': 'Nothing is kept here.',
  'queue-send-now': 'Send now',
  'entry-column-time': 'Entered',
  'entry-column-what': 'What',
  'entry-column-person': 'By',
  'entry-column-state': 'Where it is',
  'entry-column-said': 'What the server said',
  'entry-column-acts': 'To do',
  'size-title': 'Size of the screen',
  'size-says':
    'Hold a bank card against the drawn one. Make it wider or narrower until both are the same: keys are then as large as a glove needs them.',
  'size-card': 'A bank card, 85.60 mm wide',
  'size-narrower': '{step} narrower',
  'size-wider': '{step} wider',
  'scanner-title': 'Try the scanner',
  'scanner-says': 'Scan this code off the screen or a printed sheet. The page says what the scanner sends.',
  'scanner-waits': 'Nothing was scanned yet.',
  'scanner-code': 'The reference code, as a symbol',
});
