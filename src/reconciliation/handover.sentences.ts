import { addSentences } from '../platform/sentences/sentences.js';

addSentences('en', {
  handover: 'handover',
  'handover-signed-already':
    'Shift {shift} of {day} on line {line} was handed over at {at}. What came up since goes into the next handover, or under “I don’t agree” when the line is opened.',
  'handover-answered-already':
    'Line {line} was taken over already. Look at that handover; a new remark is an open point.',
  'opening-by-outgoing':
    'You handed line {line} over yourself, so somebody else must confirm the opening. Ask the lead who takes it over.',
  'handover-not-confirmed':
    'Line {line} was handed over by one person alone (shift {shift}). Whoever opens it next confirms the opening on its page.',
  'handover-not-agreed':
    'The incoming lead does not agree with the handover of line {line}: “{says}”. Look at it with both.',
});
