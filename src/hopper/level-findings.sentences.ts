import { addSentences } from '../platform/sentences/sentences.js';

addSentences('en', {
  'suspects-none-cures': 'No single mistake explains all of this. Listed are those that leave the least: look for two.',
  'suspects-tied':
    '{count} of these fit about as well as each other: the records alone can’t tell which it was. Look at all of them.',
  'suspects-only-one': 'Only one single mistake explains all of this.',
  'suspects-lead': 'The first fits {times} times better than the next.',
  'suspects-fit-says':
    'Fits: the share of the usual sizes of such a mistake after which nothing is impossible any more; all kinds count as equally common. Two mistakes at once are not looked for.',
  'suspect-what': 'Single mistake',
  'suspect-fit': 'Fits',
  'suspect-leaves': 'Leaves unexplained',
  'suspect-told': 'Against the others',
  'suspect-is-tied': 'as likely as others',
  'suspect-is-best': 'fits best',
  'suspect-is-less': 'fits less',
  'suspect-tip': '{bag} into {hopper}, {at}',
  'missing-tip-shown':
    'A tip of {mass} that nobody entered would have shown by now if it was before {at}. Since then one may still be hidden.',
  'missing-tip-hidden':
    'Whether a tip of {mass} is missing can’t be said yet: a hopper that is kept fuller than that hides one until it runs down, somebody looks in, or it is proven empty.',
  'suspect-tied': '{first:suspect}; {also:mistake} would explain it as well, and the records alone can’t tell',
  'suspect-led': '{first:suspect}; it fits {times} times better than the next',
  'suspect-alone': '{first:suspect}; no other single mistake explains all of it',
  'mistake-tip-missing': 'a tip that nobody entered',
  'mistake-tip-entered-twice': 'a tip entered twice',
  'mistake-tip-late': 'a tip entered too late',
  'mistake-wrong-tare': 'a wrong tare',
  'mistake-wrong-hopper': 'a tip entered at another hopper',
  'mistake-exits-missing': 'packs or rejects that nobody counted',
  'mistake-exits-too-many': 'packs or rejects too many',
  'mistake-empty-was-none': 'a level or empty that was none',
});
