import { addSentences } from './sentences.js';

addSentences('en', {
  paper: 'paper',
  'not-signed-in': 'You are not signed in. Sign in and do it again; nothing was changed.',
  'not-permitted': 'Your role does not allow this. Ask someone who may, or an administrator to change your role.',
  'form-not-ours': 'This form was not made by this server for you. Open the page again and send it from there.',
  'bad-form': 'Something in what was sent cannot be used. Each field says what it takes; nothing was changed.',
  'not-found': 'There is no {kind} “{asked}” here. Check the number, or search for it.',
  'no-such-page': 'There is no such page here. Use the search box, or go back.',
  'address-not-read':
    'This address cannot be read: a part of it is no id of anything. Follow a link, or use the search box.',
  'server-fault':
    'The server failed at this. Nothing was half done; try again, and tell the administrator if it stays.',
  'too-many-requests': 'Too many requests from this place. Wait a minute and try again.',
  'body-too-large': 'What was sent is larger than this server takes. Send less at a time.',
  'body-cut-off':
    'What was sent broke off before its end, or could not be unpacked. Nothing of it was taken; send it again.',
  'body-not-streamed': 'This takes {types}. Send it with that Content-Type.',
  'body-not-read': 'What was sent could not be read as {kind}. Send valid JSON or a plain form.',
  'key-missing':
    'Send an Idempotency-Key header (8 to 64 letters, digits or hyphens) with each change, a new one for each.',
  'key-used-for-other-content':
    'This key was used for another content already. Make a new key for a new change; the first one stands.',
  'still-being-recorded':
    'The same change is being recorded right now. Wait a moment and send it again with the same key.',
  'page-is-stale':
    'This was changed by someone else since you opened the page. Look at what changed, then decide again.',
  'preview-is-stale':
    'Something was recorded since you looked: the correction would now change something else. Look at it again, then decide.',
  'time-ahead': 'The time given ({stated}) is more than five minutes ahead of the server ({now}). Correct the time.',
  'time-too-far-back':
    'The time given ({stated}) is more than {hours} {hours?hour|hours} back. Ask quality to record it.',
  'reason-needed':
    'This is entered {minutes} {minutes?minute|minutes} after it happened. Give a reason for the lateness.',
  'field-missing': 'This is missing.',
  'field-unknown': 'This field is not known here. Leave it out.',
  'field-not-text': 'This takes a text of {least} to {most} characters.',
  'field-not-whole': 'This takes a whole number from {least} to {most}.',
  'field-not-decimal': 'This takes a decimal number from {least} to {most}, such as {example}.',
  'field-whole-with-separator':
    'A point or a comma can be read in two ways in a whole number. Type the digits alone, such as 1250, or with a space, 1 250; from {least} to {most}.',
  'field-not-kilograms':
    'This takes kilograms from {least} to {most} with at most three decimals, such as 996.5 or 996,5. Only a space may part thousands.',
  'field-not-instant': 'This takes an instant such as 2026-03-12T07:41:03.412Z or 2026-03-12T08:41:03+01:00.',
  'field-not-local-time':
    'The clocks of the plant did not show this time. It takes a day and a time such as 12 Mar 2026, 07:41.',
  'field-not-day': 'This takes a day such as 2026-03-12.',
  'field-not-choice': 'This takes one of: {choices}.',
  'field-not-flag': 'This takes true or false.',
  'field-not-id': 'This takes an id (a UUID).',
  'field-not-list': 'This takes a list of {least} to {most} entries.',
  'field-not-form': 'This takes an object with fields of its own.',
  'field-not-pattern': 'This takes {form:form}.',
  'form-hash': '64 hexadecimal digits',
  'form-clock-time': 'a time of day such as 06:00',
  'form-property': 'small letters, digits and hyphens, with the unit, such as moisture-percent',
  'form-cycle': 'shift codes with spaces between them, one for each day, a hyphen for a day off',
  'form-day-and-time': 'a day and time such as 2026-03-12T07:41:20',
  'form-small-code': 'small letters, digits and hyphens',
  'form-sscc': 'an SSCC of 18 digits',
  'form-person-code': '2 to 30 letters, digits, points or hyphens',
  'form-weight-series': 'letters, digits, points or hyphens, 30 at most',
  'form-pin': '4 to 8 digits',
  'form-property-and-method': 'a property and its method',
});
