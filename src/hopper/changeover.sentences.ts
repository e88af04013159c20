import { addSentences } from '../platform/sentences/sentences.js';

addSentences('en', {
  changeover: 'changeover',
  'rung-last-pack-out': 'last pack out',
  'rung-hopper-empty': 'hopper proven empty',
  'rung-reject-bin-closed': 'reject bin closed',
  'rung-film-back': 'old film and labels back',
  'rung-code-checked': 'new roll on, printed code read by two',
  'line-without-run': 'Line {line} has packed nothing yet, so there is nothing to change over from. Start the run.',
  'changeover-open-already':
    'Line {line} is being changed over to {format} already. Finish that ladder, or say why it does not take place.',
  'changeover-to-same-format': 'The line packs {format} already. Choose the format that comes next.',
  'changeover-not-finished':
    'Line {line} is being changed over. Next is rung {place} of 5: {next:rung}. Do it, then start the run.',
  'happened-changeover-not-finished':
    'A run of another format started on line {line} though its changeover stood at rung {place} of 5. Look what may be mixed.',
  'rung-not-next': 'No rung can be skipped on line {line}. Next is: {next:rung}.',
  'last-pack-not-out': 'Run {run} is open still. Count its last pack and close it.',
  'hopper-not-empty-yet':
    'Hopper {hopper} was not proven empty since the last pack. Stop the flow, look in with a second person, and record it.',
  'bin-not-closed-yet':
    'There is no closed bin {bin} with packs of run {run} in it. Close it with its packs, weigh it out, or say that it was empty.',
  'new-run-not-started': 'No run of {format} is open on line {line}. Start it, then read the first code.',
  'new-film-not-fitted': 'No film was recorded on run {run}. Scan the new roll first.',
  'new-code-not-read': 'No code was recorded on run {run}. Read it off the first pack and record it.',
  'changeover-climbed-already': 'The changeover of line {line} is finished. There is nothing to drop.',
  'no-refusal-met':
    'Bag {bag} was not refused to you here within the last {minutes} minutes. Scan it as usual; if it went in earlier, enter the tip late and say why.',
  'already-in':
    'Bag {bag} was refused ({rule}) and went into hopper {hopper} all the same, by the word of who met the refusal. Decide what happens to all it may be in.',
});
