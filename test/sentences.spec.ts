import 'reflect-metadata';
import { describe, expect, it } from '@jest/globals';
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { deliveryStatuses } from '../src/dispatch/delivery-rows.js';
import { verdicts } from '../src/disposition/standings.js';
import { bagStatuses } from '../src/drying/bag-status.js';
import { removalFates, removalKinds } from '../src/packing/removal.form.js';
import { palletStatuses } from '../src/pallets/pallet-rows.js';
import { enrolledKinds } from '../src/people/device.form.js';
import { placeKinds } from '../src/plant/customer.form.js';
import { tippingRules } from '../src/plant/grade.form.js';
import { roles } from '../src/platform/actor.js';
import { hasSentence } from '../src/platform/sentences/sentences.js';
import '../src/start-house.js';

const sourceFolder = new URL('../src/', import.meta.url).pathname;

/** What the house is made of; the demo plant's own words on the terminal are no part of the catalogue. */
const sources = readdirSync(sourceFolder, { recursive: true, encoding: 'utf8' })
  .filter((path) => /\.tsx?$/.test(path) && !/\.(spec|examples)\.ts$/.test(path) && !/^(demo|core)\//.test(path))
  .map((path) => ({ path, text: readFileSync(join(sourceFolder, path), 'utf8') }));

/** Where a sentence is asked for: what stands around its code in the source. */
const askedFor = {
  'a refusal': /new Refusal\(\s*([^,)]+)/g,
  'the kind of what is not found': /new NotFound\(\s*([^,)]+)/g,
  'the cause of an open point': /\bcause(?::|\s=)\s*([^,;}\n]+)/g,
  'a reason or the fault of a field': /\bcode:\s*([^,;}\n]+),\s*facts\b/g,
  'a way to a page': /\bcode: ('way-[a-z-]+')/g,
  'a text of a page or paper': /\bsay\(\s*([^,)`]+)/g,
};

/** Sentences whose code is put together from a word and what it is said of. */
const composed = {
  'bag-status': bagStatuses,
  'pallet-is': palletStatuses,
  'delivery-now': deliveryStatuses,
  state: [...verdicts, 'on-hold'],
  'removal-kind': removalKinds,
  'removal-fate': removalFates,
  place: placeKinds,
  tipping: tippingRules,
  role: roles,
  device: [...enrolledKinds, 'machine'],
};

/** Kebab-case codes in a piece of source, those of a choice (`isLate ? 'a' : 'b'`) all. */
function codesIn(piece: string): readonly string[] {
  const choices = piece.includes(' ? ') ? piece.slice(piece.indexOf(' ? ')) : piece;
  return [...choices.matchAll(/'([a-z][a-z0-9]*(?:-[a-z0-9]+)*)'/g)].map(([, code]) => code ?? '');
}

function codesAskedFor(pattern: RegExp): readonly string[] {
  return sources.flatMap(({ path, text }) =>
    [...text.matchAll(pattern)].flatMap(([, piece]) => codesIn(piece ?? '').map((code) => `${code} (${path})`)),
  );
}

describe('the catalogue of sentences', () => {
  it.each(Object.entries(askedFor))('has one for %s wherever the house names it', (_, pattern) => {
    const codes = codesAskedFor(pattern);
    expect(codes.length).toBeGreaterThan(10);
    expect(codes.filter((code) => !hasSentence(code.replace(/ .*/, '')))).toEqual([]);
  });

  it.each(Object.entries(composed))('has one for every word of %s', (what, words) => {
    expect(words.filter((word) => !hasSentence(`${what}-${word}`))).toEqual([]);
  });

  it('says of every rule that tipping may break both why it is refused and what has happened', () => {
    const rules = sources.find(({ path }) => path === 'hopper/tipping-rules.ts')?.text ?? '';
    const codes = [...rules.matchAll(/code: '([a-z-]+)', facts/g)].map(([, code]) => code ?? '');
    expect(codes.length).toBeGreaterThan(4);
    expect(codes.filter((code) => !hasSentence(`happened-${code}`))).toEqual([]);
  });
});
