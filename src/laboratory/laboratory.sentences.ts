import { addSentences } from '../platform/sentences/sentences.js';

addSentences('en', {
  sample: 'sample',
  result: 'result',
  'not-of-this-sample':
    'A sample stands for a bag, or for a time of a dryer, not for both. Leave this out, or change what it stands for.',
  'sample-before-its-time':
    'What this sample stands for begins at {fromAt}, after it was taken ({takenAt}). Correct one of the two.',
  'result-already-there':
    'Sample {sample} has a result of {property:measured} by {method}. Send it as a retest, or correct the one that is there.',
  'no-result-to-retest': 'Sample {sample} has no result of {property:measured} by {method} yet. Send it as the first.',
  'result-out-of-range':
    '{property:property} can’t be {amount}: it lies from {least} to {most}. Look at unit and point.',
  'result-unusual':
    '{property:property} of {amount} is far from what is usual here ({least} to {most}). Read the figure again; if it is what was measured, tick that it is so and send it once more.',
  'result-before-sample': 'Sample {sample} was taken at {takenAt}. Its result can’t be earlier: correct the time.',
  'samples-title': 'Samples',
  'samples-caption': 'Samples, latest recorded first',
  'sample-title': 'Sample {sample}',
  'sample-taken': 'Taken {at}',
  'sample-of-bag': 'Bag {bag}',
  'sample-of-hour': 'Dryer {dryer}, one hour from {from}',
  'sample-of-shift': 'Dryer {dryer}, composite of the shift from {from} to {until}',
  'sample-bags': 'Bags that it stands for',
  'sample-no-bags': 'No bag was filled to its end in this time yet.',
  'results-caption': 'Results in the order in which they were reported; all good ones count',
  'no-results-yet': 'No results yet',
  'lab-column-sample': 'Sample',
  'lab-column-stands-for': 'Stands for',
  'lab-column-taken': 'Taken',
  'lab-column-results': 'Results',
  'lab-column-property': 'Property',
  'lab-column-method': 'Method',
  'lab-column-amount': 'Figure',
  'lab-column-analysed': 'Analysed',
  'lab-column-note': 'Note',
  'lab-note-void': 'void: corrected later',
  'lab-note-retest': 'retest: stands beside the first',
  'property-moisture-percent': 'Moisture, %',
  'property-colour-iu': 'Colour, IU',
  'measured-moisture-percent': 'moisture',
  'measured-colour-iu': 'colour',
});
