import { addSentences } from '../../platform/sentences/sentences.js';

addSentences('en', {
  'line-setting': 'change of setting',
  'setting-needs-format': 'No run was on line {line} then. Choose the format that it was set for.',
  'setting-without-figure':
    'Nothing was set: give the setpoint or a limit of the weigher, as it stands on the machine.',
  'setting-in-other-unit':
    '{grams} g is a thousand times off the nominal {nominalGrams} g of {format}: it looks like another unit. Enter grams.',
  'setting-far-from-nominal':
    '{grams} g is more than {percent} % off the nominal {nominalGrams} g of {format}. Read the machine again; look whether it was set for another format.',
  'setting-limits-crossed':
    'The weigher cannot push out what is below {below} g and above {above} g: nothing would pass. Look which is which.',
  'said-setting-changed': 'The setting is recorded.',
  'said-setting-corrected': 'The setting is corrected.',
  'setting-title': 'Settings of {line}',
  'setting-says':
    'What the filler and the weigher were set to, by hand. It is shown under the control chart and in the weight report; no weight and no verdict changes by it.',
  'setting-new': 'Set otherwise',
  'setting-set-first': 'Set the machine first, then record here what it shows.',
  'setting-set-advised-first':
    'The advised setpoint is filled in. Set the filler to it first; if it shows another figure, record that one.',
  'setting-left-alone': 'Empty: it was left alone.',
  'setting-as-it-was': 'Empty: as it was.',
  'setting-now': 'Empty: now.',
  'setting-why': 'Why',
  'setting-why-hint': 'What made you set it otherwise.',
  'setting-as-advised': 'As advised',
  'setting-record': 'Record the setting',
  'setting-list': 'Changes of setting, the latest first',
  'setting-none': 'Nobody recorded a setting of this line.',
  'setting-when': 'Since when',
  'setting-format': 'Pack format',
  'setting-what': 'Set to',
  'setting-who': 'Who',
  'setting-correct': 'Correct',
  'setting-correct-title': 'Correct a setting of {line}',
  'setting-correct-is': 'Recorded for {line}, {format}, since {at}: {what}. Why: {why}',
  'setting-correct-says': 'The earlier record stays in the journal.',
  'setting-correct-why': 'What is wrong',
  'setting-incorrect': 'Recorded wrongly',
  'setting-not-occurred': 'Nothing was set then',
  'setting-correct-reason': 'Reason of the correction',
  'setting-setpoint': 'setpoint {grams} g',
  'setting-reject-below': 'pushed out below {grams} g',
  'setting-reject-above': 'pushed out above {grams} g',
  'field-name-setpoint-grams': 'Setpoint of the filler',
  'field-name-reject-below-grams': 'Weigher pushes out below',
  'field-name-reject-above-grams': 'Weigher pushes out above',
  'journal-name-setpoint-milligrams': 'setpoint, mg',
  'journal-name-reject-below-milligrams': 'pushed out below, mg',
  'journal-name-reject-above-milligrams': 'pushed out above, mg',
  'run-weights-setting': 'Set: {what}. {why}',
});
