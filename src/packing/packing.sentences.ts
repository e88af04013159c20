import { addSentences } from '../platform/sentences/sentences.js';

addSentences('en', {
  'line-has-open-run': 'Line {line} has an open run already ({run}). Close it first, then start the next one.',
  'line-was-running':
    'Run {run} was on this line until {closedAt}. Give a start at or after that, or correct the close of that run.',
  'run-is-closed':
    'Run {run} was closed at {closedAt}. Give a time before that if this happened earlier; else record it on the run that is open now.',
  'run-went-on':
    'Something was recorded of run {run} at {lastAt}, so it cannot have been closed before. Give a later time, or correct that record.',
  'before-run-start': 'Run {run} started at {startedAt}; this is of an earlier time. Correct the time.',
  'count-before-start': 'Run {run} started at {startedAt}. A count cannot be of an earlier time: correct the time.',
  'count-goes-back':
    'A count of {packCount} does not fit: {earlierCount} packs were counted before that time and {laterCount} after it. Read the counter again, or correct the wrong count first.',
  'count-or-counts': 'Send one count or a list of counts, not both.',
  'count-needed':
    'The last count of run {run} is {lastCount} at {lastAt}, too old to stand for this moment. Read the counter and give its count.',
  'code-printed-already':
    'The coder prints {code} since {changedAt} by the records of run {run}. If it is another code, type it as it stands on the pack.',
  'code-without-letters': 'This takes the code as it stands on the pack: letters and digits.',
  'film-lot-unknown':
    'The lot {code} is new here. Check it on the roll; if it is right, give its kind and the code of its supplier too.',
  'film-lot-of-other-kind':
    'The lot {code} is known here as {known:film-kind}, not as {kind:film-kind}. Check the lot on the roll.',
  'film-fitted-already': 'The lot {code} is on the machine since {fittedAt} by the records. Check the lot on the roll.',
  'more-loose-than-packed':
    'There cannot be {loosePackCount} {loosePackCount?pack|packs} loose of {packCount} that {packCount?was|were} packed. Count again, or correct the counter.',
  'line-stood-then':
    'Line {line} stood then by the records: {reason:stop-reason}, from {stoppedAt} to {startedAgainAt}. Start it again first, or correct that stop.',
  'line-stopped-since':
    'Line {line} was stopped at {stoppedAt} too ({reason:stop-reason}; ran again: {startedAgainAt}). If both are one stop, correct its time; if not, record this one with its end.',
  'line-runs-already': 'Line {line} runs again since {startedAgainAt} by the records. Record a new stop if it stands.',
  'restart-before-stop': 'The line came to a stand at {stoppedAt}; it cannot have run again before. Correct the time.',
  'never-rework': 'What is {what:never-rework} never goes back into the product. Choose where else it goes.',
  'never-rework-sweepings': 'sweepings',
  'never-rework-metal': 'metal rejects',
  'count-of-coder-change': 'change of the coder',
  'count-of-film-change': 'change of film',
  'no-run-then':
    'Line {line} had no run at {at}, so there was nothing to reject and no packs. Correct the time, or record a sample or sweepings by weight.',
  'line-without-hopper':
    'No hopper fed line {line} at {at} by the records. Correct the time, or the link in the plant.',
  'scale-has-failed': 'Scale {scale} failed its last check. Weigh again on a scale that passed.',
  'line-or-hopper-missing': 'Give the line or the hopper that the sugar left.',
  'line-and-hopper': 'Give the line or the hopper, not both: the hopper of a line is found by the time.',
  'grams-or-packs-missing': 'Give the net weight, or the number of packs.',
  'start-count-stays': 'Run {run} starts with a count of nothing; that is no reading and stays.',
  'count-of-a-change':
    'This count was read for a {occasion:count-of} and is corrected with it. Correct the {occasion:count-of} instead.',
  'correction-without-change': 'Say what is right in its place, or that it did not occur.',
  'lot-on-no-pack': 'No pack carries {lot} by the records. Record the coder change first.',
  'lot-label-printed-already':
    'The card of lot {lot} was printed already ({copies}). Say why another is needed; it will say that it is a copy.',
  'code-not-as-intended':
    'Line {line} printed {printed} from pack {firstPack} of run {run} ({changedAt}); the pattern asks for {intended}. Look at the packs and decide: relabel, hold or accept.',
  'packs-without-code':
    'Nobody recorded the code on the first {packCount} {packCount?pack|packs} of run {run} (line {line}). Read it off a pack of them and record it with its time.',
  'several-lots': '{count} lots carry the code “{code}”. Open the lot that you mean and decide on it there.',
});
