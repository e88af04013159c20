import { addSentences } from '../sentences/sentences.js';

/** What the browser's modules say. They are sent to the browser as they stand. */
export const browserSentences = {
  'browser-language': 'en',
  'browser-on-device': 'ON THIS DEVICE',
  'browser-kept-here':
    'Entered at {at} and kept on this device. It is sent by itself when the network is back. Go on with the next entry.',
  'browser-one-waits': 'one entry waits on this device',
  'browser-many-wait': '{count} entries wait on this device',
  'browser-some-refused': '{count} refused: look at them',
  'browser-off-line': 'No network',
  'browser-off-line-since': 'Off line. This page is as it was at {at}. What is entered is kept on this device.',
  'browser-off-line-says':
    'This page needs the network. Tips, pallets, stops, counts and checks can be entered on the pages below; they are sent when the network is back. Holds are lifted, deliveries closed and papers made only with the network.',
  'browser-badge': 'BADGE',
  'browser-badge-unknown': 'Nobody here has this badge. Scan it again, or sign in another way.',
  'browser-badge-needs-network':
    'Without network the person cannot change. Entries are still made as the person shown above.',
  'browser-scans-not-taken': 'Not taken meanwhile: {codes}. Scan it again.',
  'browser-no-such-command': 'This page has no such act. Open the page where it is done, then scan the card again.',
  'browser-not-a-bag': 'CHECK',
  'browser-not-a-bag-says':
    'No network, and “{code}” is no bag number: its check character does not fit. Scan it again or read it off the label.',
  'browser-bag-not-listed':
    'No network, and this bag was not in store at {at}. If it is tipped all the same, enter the tip: it is recorded as happened.',
  'browser-bag-released': 'RELEASED',
  'browser-bag-waiting': 'WAITING',
  'browser-bag-on-hold': 'HOLD',
  'browser-bag-rejected': 'REJECTED',
  'browser-bag-concession': 'CONCESSION',
  'browser-bag-other-grade': 'OTHER GRADE',
  'browser-bag-known':
    'No network. Bag {number}, grade {grade}, as of {at}. Enter the tip: it is recorded as happened.',
  'browser-bag-must-not':
    'No network. Bag {number}, grade {grade}, as of {at}: do not tip it. Take another bag. If it was tipped already, enter the tip: it is recorded as happened.',
  'browser-enter-tip': 'Enter the tip',
  'browser-signed-out':
    'You are signed out. This page no longer follows the plant; what is typed on it still stands. Sign in beside it, then come back here and go on.',
  'browser-sign-in-beside': 'Sign in',
  'browser-other-here':
    'Somebody else is signed in on this device now. This page no longer follows the plant, and nothing can be sent from it. What is typed on it still stands: note it, then open the page anew.',
  'browser-open-anew': 'Open it anew',
  'browser-this-changed': 'This has changed.',
  'browser-show-change': 'Show it',
  'browser-number-pad': 'Keys for the number',
  'browser-rub-out': 'Rub out the last digit',
  'browser-less': '{step} less',
  'browser-more': '{step} more',
  'browser-number-done': 'Done',
  'browser-entry-on-device': 'on this device',
  'browser-entry-sent': 'sent',
  'browser-entry-accepted': 'accepted',
  'browser-entry-kept': 'kept aside for somebody to look at',
  'browser-entry-refused': 'refused',
  'browser-entry-again': 'Send again',
  'browser-entry-put-away': 'Put away',
  'browser-word-tip': 'Tip',
  'browser-word-pallet': 'Pallet',
  'browser-word-stop': 'Stop',
  'browser-word-count': 'Count',
  'browser-word-check': 'Line check',
  'browser-word-sweepings': 'Sweepings',
  'browser-word-reject': 'Reject',
  'browser-word-sample': 'Sample',
  'browser-word-setting': 'Setting',
  'browser-word-hand-sample': 'Hand sample',
  'browser-word-bag': 'Bulk bag',
  'browser-reading-passed': '{off} g, within ± {allowed} g: passed',
  'browser-reading-failed': '{off} g, beyond ± {allowed} g: FAILED',
  'browser-reading-none': 'The weigher shows nothing for it: FAILED',
  'browser-reading-both': 'Either a reading, or that it shows nothing: clear one of the two.',
  'browser-reading-no-number': 'This is no number of grams. One comma or point, and no unit.',
  'browser-reading-thousandth':
    'A thousandth of what it weighs: kilograms for grams, or a comma between thousands? Enter grams.',
  'browser-reading-thousandfold': 'A thousand times what it weighs: milligrams for grams? Enter grams.',
  'browser-reading-below-zero': 'Less than nothing. Look at zero and tare, and weigh it again.',
  'browser-reading-absurd': 'Far more than it weighs. Look whether it was this pack, and weigh it again.',
  'browser-check-open': 'Enter what the weigher shows for each test pack. Whether it passes is computed.',
  'browser-check-passed': 'PASSED: each reading is off by no more than it may be. Sign it.',
  'browser-check-failed': 'FAILED: a reading is off by more than it may be. Say what was done at once, and sign.',
  'browser-sign-open': 'SIGN',
  'browser-sign-passed': 'SIGN: PASSED',
  'browser-sign-failed': 'SIGN: FAILED',
  'browser-scanner-fine': 'This scanner sends every character of own labels as printed.',
  'browser-scanner-wrong':
    'This scanner does not send what is printed. Set its keyboard language to the one of this device, then scan again.',
  'browser-scanner-other': '“{code}” is not the reference code. Scan the one on the sheet.',
  'browser-scanner-lower-case':
    'It sends small letters: switch caps lock off on the device, or case conversion in the scanner.',
  'browser-scanner-swap': '{character} arrives as {came}.',
  'browser-scanner-prefix': 'It sends “{prefix}” before a code. This is now expected on this device.',
  'browser-scanner-suffix': 'It sends “{suffix}” after a code. Switch that off in the scanner.',
  'browser-scanner-end': 'It ends a code with the key {key}. This is now expected on this device.',
  'browser-scanner-no-end': 'It ends a code with no key. Set the scanner to send Enter at the end.',
  'browser-scanner-speed': '{gap} milliseconds lie between two characters; up to 30 is taken for a scan.',
} as const;

addSentences('en', browserSentences);
