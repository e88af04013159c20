import { addSentences } from '../platform/sentences/sentences.js';

addSentences('en', {
  'line-has-open-run': 'Line {line} has an open run already ({run}). Close it first, then start the next one.',
  'line-was-running':
    'Run {run} was on this line until {closedAt}. Give a start at or after that, or correct the close of that run.',
  'run-is-closed':
    'Run {run} was closed at {closedAt}. Give a time before that if this happened earlier; else record it on the run that is open now.',
  'count-before-start': 'Run {run} started at {startedAt}. A count cannot be of an earlier time: correct the time.',
  'count-goes-back':
    'A count of {packCount} does not fit: {earlierCount} packs were counted before that time and {laterCount} after it. Read the counter again, or correct the wrong count first.',
  'count-or-counts': 'Send one count or a list of counts, not both.',
});
