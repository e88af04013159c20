import { addSentences } from '../../platform/sentences/sentences.js';

addSentences('en', {
  'demo-entrance-title': 'Alder Quay: the demo',
  'demo-entrance-says':
    'All of it is invented. Because it is, its passwords, PINs and badges stand here in plain sight; a real plant has no such page.',
  'demo-devices': 'What this browser is',
  'demo-is-no-device': 'It is a computer that the plant does not know: people sign in with code and password.',
  'demo-is-device': 'It is {device}: people sign in there with a badge, or with name and PIN.',
  'demo-devices-say': 'Press to make it another one. Then sign in.',
  'demo-no-devices': 'This demo was made before it had tablets. Start it with --fresh to make it anew.',
  'demo-become': '{device} ({kind})',
  'demo-become-none': 'No device of the plant',
  'demo-people': 'Who works here',
  'demo-people-say':
    'Without a scanner, copy a badge and paste it into the field for badges. Decisions that are asked twice on a tablet, such as lifting a hold, take badge and PIN.',
});
