import { addSentences } from '../platform/sentences/sentences.js';

addSentences('en', {
  'check-plan': 'check plan',
  'line-check': 'line check',
  'check-plan-there-already': '{station} has a plan of this kind at this line already. Change that one.',
  'check-plan-never-due': 'Nothing makes this check due. Give an interval, or at least one event.',
  'check-plan-ended':
    'The plan of {station} has not been in force since {endedAt}. Look at the list of due checks again.',
  'test-pieces-needed':
    'This kind of check is made with test pieces or test packs. Enter the ones that the plant uses.',
  'test-piece-twice': 'There are two test pieces {piece}. Give each a code of its own.',
  'test-piece-incomplete':
    'Test piece {piece} is not complete: a metal test piece needs its material and sphere, a test pack its known weight and what it may be off.',
  'result-of-no-piece': 'The plan has no piece {piece}. Load the page again; the plan was changed.',
  'result-missing': 'Say for {piece} whether it passed.',
  'reading-missing': 'No reading of {piece} came. Weigh the test pack, then send what the weigher shows.',
  'reading-is-thousandth':
    '{piece}: {grams} g is a thousandth of its {knownGrams} g. This looks like kilograms where grams are expected, or like a comma between thousands. Enter what the weigher showed, in grams.',
  'reading-is-thousandfold':
    '{piece}: {grams} g is a thousand times its {knownGrams} g. This looks like milligrams where grams are expected. Enter what the weigher showed, in grams.',
  'reading-is-below-zero':
    '{piece}: {grams} g is less than nothing. Look at the zero and the tare of the weigher, and weigh the test pack again. If it stays so, the check failed: enter it as failed, without a reading.',
  'reading-is-absurd':
    '{piece}: {grams} g is more than {times} times its {knownGrams} g. Look whether it was this pack, and weigh it again. If it stays so, the check failed: enter it as failed, without a reading.',
  'no-run-to-read-code-of': 'Line {line} had no run then, so there is no code to compare with. Start the run first.',
  'check-there-already': 'The same check was entered at {at}, as passed. Nothing to do; a failed one would be taken.',
  'check-needs-action': 'The check of {station} failed. Say what was done at once.',
  'check-needs-second-person': 'The plan of {station} asks for a second person. Say who saw it too.',
  'failed-check-is-for-quality': 'A failed check is corrected by quality only. Ask a quality officer.',
  'line-check-overdue': 'Line {line}: the check of {check} was due at {at}. Make it now.',
  'line-check-failed':
    'Line {line}: the check of {check} failed at {at}. Decide about what was packed since the last good check.',
  'torn-bag-found': 'Line {line}: a bag was torn, or its seal was ({check}). Look at the bag and decide.',
  'check-happened-against-rule':
    'Line {line}: a check of {check} was entered from a device or a paper form and does not keep a rule of the house ({rule}). Look at it.',
});
