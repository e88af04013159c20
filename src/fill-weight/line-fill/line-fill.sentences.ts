import { addSentences } from '../../platform/sentences/sentences.js';

addSentences('en', {
  'line-fill-title': 'Fill of {line}: setpoint and giveaway',
  'line-fill-link': 'Setpoint and giveaway of {line}',
  'line-fill-back': 'To the plant',
  'line-fill-no-runs': 'This line had no run in the last 90 days, so nothing is advised.',
  'line-fill-period': 'Runs since {from}: {days} days.',
  'line-fill-caution':
    'An inspector judges by the law of the country where the packs are sold, and by samples of their own. The advice takes weights as spread like a bell; nothing here shows that they are.',
  'line-fill-reckon-with': 'Reckon with other figures',
  'line-fill-reckon': 'Reckon',
  'line-fill-price-hint': 'Empty: no money is said.',
  'line-fill-tare-hint': 'By how much empty packs may be heavier than the tare that is taken. Empty: 0.',
  'line-fill-step-hint': 'Its smallest adjustment. Empty: a step of the weigher’s display.',
  'line-fill-set-by-hint': 'Each time the line is set. Empty: every pack is weighed.',
  'line-fill-risk-hint': 'In so many of a hundred lots chance may break a rule. Empty: 5, our own value.',
  'field-name-price-per-kilogram': 'Price of a kilogram',
  'field-name-tare-limit-grams': 'Limit of the tare',
  'field-name-filler-step-grams': 'Step of the filler',
  'field-name-set-by-pack-count': 'Packs weighed to set the line',
  'field-name-risk-percent': 'Risk per lot',
  'line-fill-sum': 'How the setpoint of {format} is made up',
  'line-fill-by-rules': '{place}: by {law}.',
  'line-fill-scale':
    'The limit of the scale’s error is that of pack weigher {weighers}, {grams} g, as its record says. Rounded up to {step} g.',
  'line-fill-no-tare': 'No limit of the tare is entered: a tare that is too light would make every pack short by it.',
  'line-fill-drift-says':
    'If the line was set otherwise between these lots, that counts as drift and raises the advice.',
  'line-fill-drift-by-settings':
    'Drift is how far {lots} {lots?lot|lots} lie apart about the setpoint that was recorded for each, so changes of setting are no part of it.',
  'line-fill-setting': 'Set now, as last recorded: {what}. The setpoint since {at}: {why}',
  'line-fill-no-setpoint': 'Set now, as last recorded: {what}. What the filler is set to, nobody recorded.',
  'line-fill-no-setting': 'Nobody recorded what the line is set to for this format.',
  'line-fill-offset-above':
    'In {lots} {lots?lot|lots} the mean net lay on average {offset} g above the setpoint (from {least} to {most} g). For the advised mean of {mean} g set the filler to {figure} g. How well this distance is known is not in the risk: weigh packs after setting.',
  'line-fill-offset-below':
    'In {lots} {lots?lot|lots} the mean net lay on average {offset} g below the setpoint (from {least} to {most} g). For the advised mean of {mean} g set the filler to {figure} g. How well this distance is known is not in the risk: weigh packs after setting.',
  'line-fill-offset-unknown':
    'How far the mean net lies from the setpoint is not known: it takes {least} {least?lot|lots} that {least?counts|count} and whose setpoint was recorded and left alone, there {known?is|are} {known}. So {mean} g is a mean net and no figure of the filler: weigh packs after setting.',
  'line-fill-take-over': 'Take over the advised: {grams} g',
  'line-fill-set-otherwise': 'Record another setting',
  'line-fill-setpoint': 'Setpoint (g)',
  'line-fill-markets-left-out':
    '{markets}: the format is sold there too, but no setpoint can be reckoned from those rules, so they are not in this advice; see the verdicts of the runs.',
  'line-fill-market-hint': 'Empty: where each format is sold, as set up.',
  'line-fill-currency-hint': 'Of the price above, three letters, such as EUR. Empty: amounts are shown without one.',
  'line-fill-price-set-up-hint': 'Empty: as set up for each format; else no money is said.',
  'line-fill-nothing-weighed':
    'No closed run of this format was weighed by a pack weigher, so nothing is advised. See whether the line has one, and whether it sends.',
  'line-fill-few-lots':
    'Nothing is advised yet: it takes {least} closed runs with at least {packs} weighed {packs?pack|packs}, and half of the counted ones, to see how lots drift; there {used?is|are} {used}. Weigh {count} more {count?run|runs}.',
  'line-fill-outside': 'Nothing is advised: {why}',
  'line-fill-other-rules':
    'Nothing is advised: {law} does not ask for a mean and shares beyond T1 and T2 in figures that a setpoint could be reckoned from. Choose another market.',
  'line-fill-no-spread':
    'Nothing is advised: all packs of a lot seem to weigh the same, which no line does. See whether the weigher works.',
  'line-fill-present-mean': 'Mean of these lots',
  'line-fill-sigma': 'Standard deviation within lots',
  'line-fill-drift': 'Drift between lots',
  'line-fill-given-away': 'Given away net',
  'line-fill-kilograms-a-month': 'kg a month',
  'line-fill-month':
    'Reckoned from the period: {packs} counted {packs?pack|packs} of this format a day, so {month} in 30 days.',
  'line-fill-lots': 'Last closed runs: {format}',
  'line-fill-no-closed': 'none is closed yet',
  'line-fill-run': 'Run',
  'line-fill-started': 'Started',
  'line-fill-weighed': 'Weighed',
  'line-fill-counted': 'Counted',
  'line-fill-mean': 'Mean (g)',
  'line-fill-spread': 'Standard deviation (g)',
  'line-fill-giveaway': 'Giveaway net (kg)',
  'line-fill-used': 'Counts for advice',
  'line-fill-is-used': 'yes',
  'line-fill-left-out-not-weighed': 'no: not weighed',
  'line-fill-left-out-few-packs': 'no: too few weighed',
  'line-fill-left-out-mostly-unweighed': 'no: most packs not weighed',
});
