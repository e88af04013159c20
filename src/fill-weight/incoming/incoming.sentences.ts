import { addSentences } from '../../platform/sentences/sentences.js';

addSentences('en', {
  'machine-weighs-nothing': 'This machine is no pack weigher. Have it set up on its line first, then send again.',
  'weights-in-error':
    '{wrong} of {lines} lines cannot be taken, so nothing of the batch was. Correct them, or send with lines=skip to have the rest taken.',
  'weights-in-hand':
    '{most} batches of weights are being written already. Wait as long as Retry-After says and send again; nothing of this one was taken.',
  'weights-not-as-announced':
    '{announced} lines were announced and {found} came: the batch was cut off. Nothing of it was taken; send it again.',
  'too-many-weights': 'One batch takes {most} weights at most. Send it in parts; nothing of this one was taken.',
  'too-many-gaps':
    'The sequences of this batch have {gaps} gaps; {most} are taken at once. Look whether the sequence counts packs, or send fewer at a time.',
  'weight-line-not-json': 'This line is no JSON object. Send one object a line, such as {example}.',
  'weight-line-too-long': 'This line is longer than {most} bytes. Send one weight a line.',
  'weight-given-twice': 'The weight, or the column, is given twice. Send it once, as netGrams or netMilligrams.',
  'weight-not-number': 'This takes a plain number: grams with a point such as 1003.2, or whole milligrams.',
  'weight-text-not-taken': 'This takes a text of 60 characters at most, and a batch names 200 different ones at most.',
  'weight-fields-not-counted':
    'This line has {found} fields where the first line has {expected}. Where fields are parted by commas, decimals take a point.',
  'weight-quotes-not-closed':
    'A quoted field of this line does not end. Close the quotes; no field goes on to the next line.',
  'weight-header-not-read': 'The first line must name the columns: {fields}.',
  'weight-column-unknown':
    'Column {column} is called “{named}”, which is none of ours. The first line names the columns: {fields}.',
  'weight-run-unknown':
    'There is no run {run} here. Send the number as the plant’s records have it, or leave it out: then the time tells the run.',
  'weight-run-of-other-line':
    'Run {run} is of line {itsLine}; this weigher stands on line {line}. Send with the right run, or set the weigher up on that line.',
  'weight-of-other-line':
    'This names line {named}; the weigher stands on line {line}. Send with its own line, or set it up there.',
  'weight-without-run':
    'The line had no run at {at}. Start the run, or correct the clock of the weigher, and send again.',
  'weight-time-not-read':
    'This is no time as the columns of the file were described. Look at the order of the date, and whether the time stands in a column of its own.',
  'weight-ahead-of-clock':
    '{at} is ahead of the plant’s clock ({now}). Correct the clock of the weigher, or send its time as Device-Time.',
  'weight-before-run':
    '{at} is before run {run} started at {startedAt}. Send with the run of that time, or correct the clock of the weigher.',
  'weight-after-run':
    '{at} is after run {run} was closed at {closedAt}. Send with the run of that time, or correct the clock of the weigher.',
  'weight-in-kilograms':
    '{grams} g for packs of {nominalGrams} g: this looks like kilograms where grams are expected. Send grams, or milligrams as netMilligrams.',
  'weight-in-milligrams':
    '{grams} g for packs of {nominalGrams} g: this looks like milligrams where grams are expected. Send grams, or milligrams as netMilligrams.',
  'weight-below-zero':
    '{grams} g is less than nothing. Look at the zero and the tare of the weigher; leave the line out.',
  'weight-absurd':
    '{grams} g is more than {times} times the nominal {nominalGrams} g of run {run}. Look at the unit and the run; leave the line out if it was no pack.',
  'weight-sequence-twice':
    'Sequence {sequence} stands on line {line} already, with another weight. Leave out the wrong one.',
  'weight-sequence-of-other':
    'Sequence {sequence} was received before, with {keptGrams} g or otherwise. Where the counter began again, send with another series; a weight that was received is not changed.',
});
