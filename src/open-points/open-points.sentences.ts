import { addSentences } from '../platform/sentences/sentences.js';

addSentences('en', {
  'open-point': 'open point',
  'point-ended-already': 'This point is {how:point-how} already. Look at the list again.',
  'point-is-for-another': 'This point is for a {role:role}. Ask them to answer it.',
  'scale-check-overdue':
    'Scale {scale} is overdue for its check; what it weighs is doubtful until then. Have it checked with known weights.',
  'scale-check-failed':
    'Scale {scale} failed its last check. Take it out of use, and decide about what it weighed since the check before.',
  'points-title': 'Open points',
  'points-says':
    'What the rules of the house ask people to look at. A point goes when its cause is gone, or when somebody says why it stays.',
  'points-none': 'Nothing is open.',
  'points-open': '{count} open, newest first',
  'points-ended': 'Dealt with lately ({count})',
  'points-what': 'What, and what to do',
  'points-subject': 'About',
  'points-for': 'For',
  'points-raised': 'Raised',
  'points-how': 'How',
  'points-ended-at': 'When',
  'points-cleared': 'its cause is gone',
  'points-explained': 'explained',
  'point-how-cleared': 'cleared',
  'point-how-explained': 'explained',
  'point-how-ended': 'ended',
  'points-role': 'For the role',
  'points-all-roles': 'all roles',
  'points-show': 'Show',
});
