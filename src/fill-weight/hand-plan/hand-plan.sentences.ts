import { addSentences } from '../../platform/sentences/sentences.js';

addSentences('en', {
  'hand-sample-overdue':
    'Line {line}: a hand sample of {count} {count?pack|packs} was due at {at}. Take them from the line and weigh them now.',
  'hand-sample-on-failed-scale':
    'Line {line}, run {run}: the hand sample of {at} was weighed on scale {scale}, which had failed its check. Have packs weighed again on another scale, or withdraw the sample.',
  'no-hand-sample-plan': 'Nothing is planned for line {line} and that format. Look at the plans again.',
});
