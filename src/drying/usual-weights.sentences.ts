import { addSentences } from '../platform/sentences/sentences.js';

addSentences('en', {
  'safe-load-missing': 'Say of which type the bag is, or what load its maker’s label gives. Neither was given.',
  'net-not-usual':
    'Bag {bag} would have {kilograms} kg net; bags of this grade on this scale usually have {least} to {most} kg. Look at the scale again. If it is so, confirm it: it is recorded, and quality looks at it.',
  'tare-not-usual':
    'The tare of bag {bag} is {kilograms} kg; bags of its type usually have {least} to {most} kg. Is it the right type? If it is so, confirm it: it is recorded, and quality looks at it.',
  'net-not-usual-kept':
    'Bag {bag} was closed with {kilograms} kg net, out of the usual {least} to {most} kg, after a second look. Find out why: scale, tare, or filler.',
  'tare-not-usual-kept':
    'Bag {bag} was closed with a tare of {kilograms} kg, out of the usual {least} to {most} kg of its type, after a second look. Find out why.',
});
