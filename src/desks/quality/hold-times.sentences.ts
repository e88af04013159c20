import { addSentences } from '../../platform/sentences/sentences.js';

addSentences('en', {
  'hold-shift-name': '{code}, {on} shift {shift}',
  'hold-new-times': 'Only what may have been packed from {from} to {until}: up to the first count after it.',
  'hold-new-shift': 'A whole shift of a dryer or a line',
  'hold-new-shift-says':
    'Of a dryer: every bag that was closed in it. Of a line: every pack that may have been packed in it.',
  'hold-new-place': 'Dryer or line',
  'hold-new-on': 'Production day',
  'hold-new-shift-code': 'Shift',
  'hold-new-minutes': 'Some minutes of a run',
  'hold-new-run': 'Run',
  'hold-new-from': 'From',
  'hold-new-until': 'Until',
  'hold-no-such-shift': 'There is no shift {shift} on {on}. Choose another shift or day.',
});
