import 'reflect-metadata';
import { describe, expect, it } from '@jest/globals';
import { getMetadataStorage } from 'class-validator';
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
import { languages } from '../src/platform/sentences/language.js';
import { hasSentence, say, sentencesOf } from '../src/platform/sentences/sentences.js';
import { nameCodeOf } from '../src/platform/web/kit/entry-form.js';
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

/** The same in both languages on purpose: names of numbers, loan words, what is facts alone. */
const sameInBoth = new Set([
  ...['bag-sscc', 'plant-gtin', 'plant-gln', 'people-field-pin', 'proof-pin', 'thread-kilograms-head'],
  ...['role-auditor', 'delivery-no', 'film-kind-film', 'account-packaging-film', 'line-event-film', 'choose-none'],
  ...[
    'field-name-film',
    'field-name-material',
    'field-name-pin',
    'dock-no',
    'weigher-no',
    'language-en',
    'language-es',
  ],
  ...['set-up-shifts-three-by-eight-says', 'set-up-shifts-two-by-twelve-says'],
]);

/** Things that are counted, as the words stand behind their number. */
const several = {
  en: '(?:more |other |older |blank |bulk )?(?:packs|pallets|bags|units|entries|rows|lots|samples|reasons|minutes|matters|holds|parts)',
  es: 'paquetes|palés|big bags|unidades|asientos|filas|lotes|muestras|motivos|minutos|asuntos|retenciones|partes',
} as const;

/** Never said of one, or of a name or a mass and not of a count, or of a paper's first edition. */
const neverOne = new Set([
  ...['several-lots', 'label-more-lots', 'packs-without-code', 'account-part-accepted-packs', 'account-part-samples'],
  ...['line-part-sampled', 'grade-not-taken', 'which-lot', 'line-column-says', 'undo-too-late', 'no-refusal-met'],
  ...['note-lot-total', 'note-bags-total', 'recall-report-answer', 'field-not-list', 'count-goes-back'],
  ...['recall-verdict-adds-up', 'recall-verdict-some-unaccounted', 'recall-verdict-more-found-than-produced'],
]);

/** What is said of a count, as for one and as for any other. */
const countForm = /\{(\w+)\?([^{}|]*)\|([^{}|]*)\}/g;

/** A sentence without its facts, figures, units and names of numbers: what is left are words of a language. */
const wordsOf = (text: string): string =>
  text.replaceAll(countForm, '$2 $3').replaceAll(/\{[^}]*\}|GTIN|\b(?:kg|g|s|min|h|d)\b|[^\p{L}]/gu, '');

/** The names of the facts that a sentence is filled with. */
const factsOf = (text: string): readonly string[] =>
  [...new Set([...text.matchAll(/\{=?(\w+)(?::[\w-]+|\?[^{}|]*\|[^{}|]*)?\}/g)].map(([, name]) => name ?? ''))].sort();

const known = (code: string): boolean => languages.every((language) => hasSentence(code, language));

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

/** Words of the journal, by what stands before them in the source; events of a hopper's flow are no subjects. */
const journalWords = {
  'an action': { pattern: /\baction: ([^\n]+),\s+subject\b/g, codeOf: (action: string) => `action-${action}` },
  'an action of two kinds': { pattern: /\bconst action = ([^\n]+);/g, codeOf: (action: string) => `action-${action}` },
  'a subject': { pattern: /\{ kind: ('(?!(?:addition|exit)')[a-z-]+'), id\b/g, codeOf: (kind: string) => kind },
};

/** The classes of all forms, by name. */
async function formClasses(): Promise<ReadonlyMap<string, readonly (new () => object)[]>> {
  const classes = new Map<string, (new () => object)[]>();
  for (const { path } of sources.filter((source) => source.path.endsWith('.form.ts'))) {
    const exported = (await import(join(sourceFolder, path))) as Record<string, unknown>;
    for (const [name, form] of Object.entries(exported)) {
      if (typeof form === 'function') classes.set(name, [...(classes.get(name) ?? []), form as new () => object]);
    }
  }
  return classes;
}

/** The names of a form's fields, those of the forms in its lists among them. */
function fieldsOf(form: new () => object): readonly string[] {
  const own = getMetadataStorage().getTargetValidationMetadatas(form, '', false, false);
  return [...new Set(own.map(({ propertyName }) => propertyName))].flatMap((name) => {
    const described = Reflect.getMetadata('swagger/apiModelProperties', form.prototype as object, name) as unknown;
    const listed = (described as { type?: unknown } | undefined)?.type;
    const inner: unknown = typeof listed === 'function' && !listed.prototype ? (listed as () => unknown)() : null;
    const nested = Array.isArray(inner) ? fieldsOf(inner[0] as new () => object) : [];
    return [name, ...nested.map((within) => `${name}.0.${within}`)];
  });
}

describe('the catalogue of sentences', () => {
  it.each(Object.entries(askedFor))('has one for %s wherever the house names it', (_, pattern) => {
    const codes = codesAskedFor(pattern);
    expect(codes.length).toBeGreaterThan(10);
    expect(codes.filter((code) => !known(code.replace(/ .*/, '')))).toEqual([]);
  });

  it.each(Object.entries(composed))('has one for every word of %s', (what, words) => {
    expect(words.filter((word) => !known(`${what}-${word}`))).toEqual([]);
  });

  it.each(Object.entries(journalWords))('has one for %s that an entry of the journal names', (_, words) => {
    const codes = codesAskedFor(words.pattern).map((found) => found.replace(/^\S+/, (word) => words.codeOf(word)));
    expect(codes.length).toBeGreaterThan(1);
    expect(codes.filter((code) => !known(code.replace(/ .*/, '')))).toEqual([]);
  });

  it('has a name for every field of every form that a page sends', async () => {
    const classes = await formClasses();
    const sent = sources.filter(({ text }) => /\bSentForm\b/.test(text));
    const forms = sent.flatMap(({ text }) =>
      [...text.matchAll(/\bform: ([A-Z]\w+Form)\b/g)].map(([, name]) => name ?? ''),
    );
    expect(new Set(forms).size).toBeGreaterThan(75);
    expect(forms.filter((name) => !classes.has(name))).toEqual([]);
    const fields = [...new Set(forms)].flatMap((name) =>
      (classes.get(name) ?? []).flatMap((form) => fieldsOf(form).map((field) => `${nameCodeOf(field)} (${name})`)),
    );
    expect(fields.length).toBeGreaterThan(300);
    expect(fields.filter((field) => !known(field.replace(/ .*/, '')))).toEqual([]);
  });

  it('says of every rule that tipping may break both why it is refused and what has happened', () => {
    const rules = sources.find(({ path }) => path === 'hopper/tipping-rules.ts')?.text ?? '';
    const codes = [...rules.matchAll(/code: '([a-z-]+)', facts/g)].map(([, code]) => code ?? '');
    expect(codes.length).toBeGreaterThan(4);
    expect(codes.filter((code) => !known(`happened-${code}`))).toEqual([]);
  });

  it('says everything in every language, with the same facts', () => {
    const english = sentencesOf('en');
    expect(english.size).toBeGreaterThan(900);
    for (const language of languages) {
      const others = sentencesOf(language);
      expect([...english.keys()].filter((code) => !others.has(code))).toEqual([]);
      expect([...others.keys()].filter((code) => !english.has(code))).toEqual([]);
      const unlike = [...english].filter(
        ([code, text]) => String(factsOf(text)) !== String(factsOf(others.get(code) ?? '')),
      );
      expect(unlike.map(([code]) => code)).toEqual([]);
    }
  });

  it.each(languages)('says one of a thing as one and several as several: %s', (language) => {
    const texts = sentencesOf(language);
    // Broken forms would be shown as they stand.
    expect([...texts].filter(([, text]) => /\{[^{}]*[?|]/.test(text.replaceAll(countForm, '')))).toEqual([]);
    const counted = [...texts].filter(([code]) => !code.startsWith('browser-') && !neverOne.has(code));
    const said = counted.filter(([, text]) => new RegExp(`\\{\\w+\\} (?:${several[language]})\\b`, 'u').test(text));
    expect(said.map(([code]) => code)).toEqual([]);
    const forms = [...texts.values()].flatMap((text) => [...text.matchAll(countForm)]);
    expect(forms.length).toBeGreaterThan(100);
    expect(forms.filter(([, , one, many]) => one === many)).toEqual([]);
    // A count that is shown and one that is spoken of are the same fact.
    const elsewhere = [...texts].filter(([, text]) =>
      [...text.matchAll(countForm)].some(([, name]) => !text.includes(`{${name ?? ''}}`)),
    );
    expect(elsewhere).toEqual([]);
  });

  it('counts in both languages', () => {
    expect(say('at-in-store', { count: 1, packs: '1' })).toBe('In store: 1 pallet, 1 pack');
    expect(say('at-in-store', { count: 0, packs: '1 001' })).toBe('In store: 0 pallets, 1 001 packs');
    expect(say('desk-says', { count: 1 })).toBe('1 matter waits for a decision, the gravest first.');
    expect(say('desk-says', { count: 1 }, 'es')).toBe('1 asunto espera una decisión, lo más grave primero.');
    expect(say('desk-says', { count: 21 }, 'es')).toBe('21 asuntos esperan una decisión, lo más grave primero.');
  });

  it('leaves no English in Spanish', () => {
    const spanish = sentencesOf('es');
    const left = [...sentencesOf('en')].filter(
      ([code, text]) => spanish.get(code) === text && wordsOf(text) !== '' && !sameInBoth.has(code),
    );
    expect(left.map(([code]) => code)).toEqual([]);
  });

  it('has words for every family that a sentence takes its facts from, and for every form that a field takes', () => {
    const codes = [...sentencesOf('en').keys()];
    const texts = languages.flatMap((language) => [...sentencesOf(language).values()]);
    const families = texts.flatMap((text) => [...text.matchAll(/\{\w+:([\w-]+)\}/g)].map(([, family]) => family ?? ''));
    expect(families.length).toBeGreaterThan(20);
    expect(families.filter((family) => !codes.some((code) => code.startsWith(`${family}-`)))).toEqual([]);
    const forms = sources.flatMap(({ text }) => [...text.matchAll(/\bform: '([^']+)'/g)].map(([, form]) => form ?? ''));
    expect(forms.length).toBeGreaterThan(8);
    expect(forms.filter((form) => !known(`form-${form}`))).toEqual([]);
  });

  it('says a fact that is a word of the house in the words of its family', () => {
    const facts = { bag: '260312-05', status: 'hanging' };
    expect(say('bag-not-in-store', facts, 'es')).toContain('(colgado sobre una tolva)');
    expect(say('bag-not-in-store', { ...facts, status: 'of-no-family' }, 'es')).toContain('(of-no-family)');
    expect(say('results-missing', { bag: 'B', missing: 'moisture-percent, colour-iu' }, 'es')).toContain(
      'humedad, color',
    );
  });
});
