import { addSentences } from '../platform/sentences/sentences.js';

addSentences('en', {
  'setpoint-advice':
    'Set the mean to {setpoint} g, as this line’s own scale and tare show it. {rule} People decide; this is advice.',
  'setpoint-binds-mean': 'The rule of the mean asks for most.',
  'setpoint-binds-t1': 'The rule of packs beyond T1 asks for most: less spread would lower it.',
  'setpoint-binds-t2': 'The rule of packs beyond T2 asks for most: less spread would lower it much.',
  'setpoint-sum': 'How the setpoint is made up',
  'setpoint-term': 'Term',
  'setpoint-lowest-mean': 'lowest true mean that obeys all three rules',
  'setpoint-sampling-and-drift': 'chance: packs weighed when it was set, and drift between lots',
  'setpoint-tare': 'limit of the tare',
  'setpoint-scale': 'limit of the scale’s error',
  'setpoint-rounding-up': 'rounded up to the filler’s step',
  'setpoint-is': 'setpoint',
  'setpoint-risk':
    'In at most {any} % of lots chance breaks a rule ({asked} % were asked for), if scale and tare are as wrong as they may be. Chance is {sampling} g from the packs weighed and {drift} g from drift, {together} g together; the errors of scale and tare are the same in every lot and are added in full.',
  'setpoint-not-in-risk':
    'Not in this risk: weights that are not spread like a bell (look at the histogram), a spread or drift known from few lots, a line that changes. Lots between two settings share one error of setting and fail together. Legal metrology differs by country; your own authority’s rules come first.',
  'setpoint-saves':
    'Now the line gives away {away} kg net a month, worth {awayMoney}; this setting would save {kilograms} kg, worth {money}.',
  'setpoint-costs':
    'Now the line gives away {away} kg net a month, worth {awayMoney}; this setting takes {kilograms} kg more, worth {money}, because the present one does not keep the rules at this risk.',
  'setpoint-short':
    'Now the packs hold {away} kg less a month than they say, worth {awayMoney}; this setting takes {kilograms} kg more, worth {money}. Ask quality what becomes of the packs that are short.',
  'setpoint-saves-unpriced': 'Now the line gives away {away} kg net a month; this setting would save {kilograms} kg.',
  'setpoint-costs-unpriced':
    'Now the line gives away {away} kg net a month; this setting takes {kilograms} kg more, because the present one does not keep the rules at this risk.',
  'setpoint-short-unpriced':
    'Now the packs hold {away} kg less a month than they say; this setting takes {kilograms} kg more. Ask quality what becomes of the packs that are short.',
});
