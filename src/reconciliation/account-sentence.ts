import { say } from '../platform/sentences/sentences.js';
import type { AccountView, LineKind } from './account-view.js';
import { kilograms } from './kilograms.js';

const poured: readonly LineKind[] = ['bag-tipped', 'rework'];

/** What came out, in the order in which the sentence names it. */
const outs: readonly LineKind[] = ['accepted-packs', 'rejects', 'samples', 'sweepings', 'weighed-back'];

/** The sentence that must balance: what was there and poured in, what became of it, and what is left over. */
export function balanceSentence(account: AccountView): string {
  const sum = (...kinds: readonly LineKind[]): number =>
    account.lines.reduce((grams, line) => (kinds.includes(line.kind) ? grams + line.grams : grams), 0);
  const out = outs
    .map((kind) => ({ kind, grams: sum(kind) }))
    .filter(({ kind, grams }) => grams > 0 || kind === 'accepted-packs')
    .map(({ kind, grams }) => say(`account-part-${kind}`, { kilograms: kilograms(grams) }));
  const opening = account.openingNotSeen === null ? kilograms(sum('opening')) : say('account-not-observed');
  const closing = account.closingNotSeen === null ? kilograms(sum('closing')) : say('account-not-observed');
  const first = say('account-sentence-in', { opening, poured: kilograms(sum(...poured)) });
  const second = say('account-sentence-out', { parts: out.join(' + '), closing });
  return `${first} ${second} ${differenceSentence(account)}`;
}

function differenceSentence({ differenceGrams }: AccountView): string {
  if (differenceGrams === null) return say('account-left-unknown');
  const facts = { kilograms: kilograms(Math.abs(differenceGrams)) };
  if (differenceGrams === 0) return say('account-left-nothing');
  return say(differenceGrams > 0 ? 'account-left-missing' : 'account-left-too-much', facts);
}
