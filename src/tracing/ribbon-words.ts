import { say } from '../platform/sentences/sentences.js';
import { gramPreciseText } from './thread-text.js';
import type { RibbonBag, Ribbons } from './ribbons.js';

/** The amounts of a bag in words, as the table beneath has them. */
export function amountsText({ leastGrams, likelyGrams, mostGrams, word }: RibbonBag): string {
  return say('ribbon-amounts', {
    least: gramPreciseText(leastGrams),
    likely: gramPreciseText(likelyGrams),
    most: gramPreciseText(mostGrams),
    word: say(`link-${word}`),
  });
}

/** Grams along the axis as whole kilograms. */
export function axisText(grams: number): string {
  return gramPreciseText(Math.round(grams / 1000) * 1000).replace(/[.,]000$/, '');
}

/** What the picture shows, for who cannot see it. */
export function ribbonsInWords({ hopperCode, windows, bags }: Ribbons): string {
  const asked = windows
    .slice(0, 6)
    .map(({ fromGrams, toGrams }) => say('ribbon-stretch', { from: axisText(fromGrams), to: axisText(toGrams) }))
    .join(', ');
  const named = bags.filter(({ word }) => word !== 'possible').slice(0, 12);
  return [
    say('ribbon-in-words', { hopper: hopperCode, asked }),
    ...named.map((bag) => `${bag.name}: ${amountsText(bag)}.`),
    say('ribbon-possible-count', { count: bags.filter(({ word }) => word === 'possible').length }),
  ].join(' ');
}
