import { ApiProperty, type ApiPropertyOptions } from '@nestjs/swagger';
import { Transform, Type } from 'class-transformer';
import { IsOptional, ValidateNested, type ValidationOptions } from 'class-validator';
import type { SentenceFacts } from '../refusal.js';
import {
  ArrayMaxSize,
  ArrayMinSize,
  IsArray,
  IsBoolean,
  IsIn,
  IsInt,
  IsString,
  IsUuid,
  Length,
  Matches,
  Max,
  Min,
  sharedCheck,
} from './checks.js';
import { hasSeparator, withoutGroups } from './typed-numbers.js';

/** How a field is asked for: optional fields are null when absent. */
export interface FieldOptions {
  readonly optional?: boolean;
  readonly example?: unknown;
  readonly says?: string;
}

/** What a check says when it fails: the sentence of a field's fault. */
export const wrong = (code: string, facts: SentenceFacts = {}): ValidationOptions => ({
  message: code,
  context: facts,
});

/** A field's checks and its description in one. The last check is the first to see what came in. */
export function field(
  options: FieldOptions,
  schema: ApiPropertyOptions,
  checks: readonly PropertyDecorator[],
): PropertyDecorator {
  const optional = options.optional ?? false;
  const described = {
    ...schema,
    ...(options.says === undefined ? {} : { description: options.says }),
    ...(options.example === undefined ? {} : { example: options.example }),
    required: !optional,
    ...(optional ? { nullable: true } : {}),
  } as ApiPropertyOptions;
  return (target, property) => {
    if (optional) IsOptional()(target, property);
    ApiProperty(described)(target, property);
    for (const check of checks) check(target, property);
  };
}

/** Forms and scanners bring spaces and line ends; an empty text is absent. */
const tidied = Transform(({ value }: { value: unknown }) => {
  if (typeof value !== 'string') return value;
  const text = value.trim();
  return text === '' ? undefined : text;
});

const numberFromText = Transform(({ value }: { value: unknown }) => {
  if (typeof value !== 'string') return value;
  const text = withoutGroups(value);
  if (text === '') return undefined;
  return /^-?\d{1,15}$/.test(text) ? Number(text) : text;
});

/** A text of one line. No control characters. `form` is what a pattern takes: `pin` for the sentence `form-pin`. */
export function TextField(
  options: FieldOptions & { least?: number; most?: number; pattern?: RegExp; form?: string } = {},
): PropertyDecorator {
  const { least = 1, most = 200, pattern, form } = options;
  return field(
    options,
    { type: 'string', minLength: least, maxLength: most, ...(pattern ? { pattern: pattern.source } : {}) },
    [
      ...(pattern ? [Matches(pattern, wrong('field-not-pattern', { form: form ?? pattern.source }))] : []),
      // Control characters and lone surrogates are refused.
      Matches(
        /^[^\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f\ud800-\udfff]*$/u,
        wrong('field-not-text', { least, most }),
      ),
      Length(least, most, wrong('field-not-text', { least, most })),
      IsString(wrong('field-not-text', { least, most })),
      tidied,
    ],
  );
}

const HasNoSeparator = sharedCheck('hasNoSeparator', (value) => !hasSeparator(value));

/** A whole number within a range (both ends included). Spaces may part thousands; a point or a comma is refused. */
export function WholeField(options: FieldOptions & { least?: number; most?: number } = {}): PropertyDecorator {
  const { least = 0, most = 2_000_000_000 } = options;
  const facts = { least, most };
  return field(options, { type: 'integer', minimum: least, maximum: most }, [
    HasNoSeparator(wrong('field-whole-with-separator', facts)),
    Max(most, wrong('field-not-whole', facts)),
    Min(least, wrong('field-not-whole', facts)),
    IsInt(wrong('field-not-whole', facts)),
    numberFromText,
  ]);
}

const IsDecimalWithin = sharedCheck('isDecimalWithin', isDecimalWithin);

/** A decimal as text, comma or point, kept as it was given with a point: `0.060`. */
export function DecimalField(options: FieldOptions & { least?: string; most?: string } = {}): PropertyDecorator {
  const { least = '0', most = '1000000' } = options;
  const facts = { least, most, example: typeof options.example === 'string' ? options.example : '0.02' };
  return field(options, { type: 'string', pattern: '^-?\\d{1,9}([.,]\\d{1,9})?$' }, [
    IsDecimalWithin(least, most, wrong('field-not-decimal', facts)),
    Transform(({ value }: { value: unknown }) => {
      if (typeof value === 'number') return String(value);
      if (typeof value !== 'string') return value;
      const text = withoutGroups(value).replace(',', '.');
      return text === '' ? undefined : text;
    }),
  ]);
}

function isDecimalWithin(value: unknown, least: string, most: string): boolean {
  if (typeof value !== 'string' || !/^-?\d{1,9}(\.\d{1,9})?$/.test(value)) return false;
  return Number(value) >= Number(least) && Number(value) <= Number(most);
}

/** An instant with its offset; comes out as fixed-width UTC text. */
export function InstantField(options: FieldOptions = {}): PropertyDecorator {
  const example = options.example ?? '2026-03-12T07:41:03.412Z';
  return field({ ...options, example }, { type: 'string', format: 'date-time' }, [
    Matches(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z$/, wrong('field-not-instant')),
    IsString(wrong('field-not-instant')),
    Transform(({ value }: { value: unknown }) => (typeof value === 'string' ? instantOrAsIs(value.trim()) : value)),
  ]);
}

function instantOrAsIs(text: string): string | undefined {
  if (text === '') return undefined;
  const match = /^((?:19|20|21)\d{2}-\d\d-\d\d)T\d\d:\d\d(:\d\d(\.\d{1,9})?)?(Z|[+-]\d\d:\d\d)$/.exec(text);
  const at = match === null ? Number.NaN : Date.parse(text);
  if (Number.isNaN(at) || !isDay(match?.[1] ?? '')) return text.slice(0, 40).replace(/Z$/, '');
  return new Date(at).toISOString();
}

const IsDay = sharedCheck('isDay', isDay);

/** A day of the calendar. */
export function DayField(options: FieldOptions = {}): PropertyDecorator {
  return field({ example: '2026-03-12', ...options }, { type: 'string', format: 'date' }, [
    IsDay(wrong('field-not-day')),
    tidied,
  ]);
}

function isDay(value: unknown): boolean {
  if (typeof value !== 'string' || !/^(19|20|21)\d{2}-\d\d-\d\d$/.test(value)) return false;
  const at = new Date(`${value}T00:00:00.000Z`);
  return !Number.isNaN(at.getTime()) && at.toISOString().startsWith(value);
}

/** One of a few words. */
export function ChoiceField(choices: readonly string[], options: FieldOptions = {}): PropertyDecorator {
  return field({ example: choices[0], ...options }, { type: 'string', enum: [...choices] }, [
    IsIn([...choices], wrong('field-not-choice', { choices: choices.join(', ') })),
    tidied,
  ]);
}

/** Some of a few words, each once at most. A form that ticks only one sends it bare. */
export function ChoiceListField(choices: readonly string[], options: FieldOptions = {}): PropertyDecorator {
  const facts = { choices: choices.join(', ') };
  const list = { least: 0, most: choices.length };
  return field(
    { example: [choices[0]], ...options },
    { type: 'array', items: { type: 'string', enum: [...choices] } },
    [
      IsIn([...choices], { each: true, ...wrong('field-not-choice', facts) }),
      ArrayMaxSize(choices.length, wrong('field-not-list', list)),
      IsArray(wrong('field-not-list', list)),
      Transform(({ value }: { value: unknown }) => (typeof value === 'string' && value !== '' ? [value] : value)),
    ],
  );
}

/** Yes or no. A ticked box of a plain form comes as `on`. */
export function FlagField(options: FieldOptions = {}): PropertyDecorator {
  return field({ example: false, ...options }, { type: 'boolean' }, [
    IsBoolean(wrong('field-not-flag')),
    Transform(({ value }: { value: unknown }) => {
      if (value === 'true' || value === 'on') return true;
      if (value === 'false') return false;
      return value;
    }),
  ]);
}

/** The id of something. */
export function IdField(options: FieldOptions = {}): PropertyDecorator {
  return field({ example: '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10', ...options }, { type: 'string', format: 'uuid' }, [
    IsUuid(wrong('field-not-id')),
    IsString(wrong('field-not-id')),
    Transform(({ value }: { value: unknown }) => {
      if (typeof value !== 'string') return value;
      const text = value.trim().toLowerCase();
      return text === '' ? undefined : text;
    }),
  ]);
}

/** One ticked box of several comes as one text. */
const listed = Transform(({ value }: { value: unknown }) => (typeof value === 'string' ? [value] : value));

/** A list of words or ids, each checked by `each`. */
export function IdListField(options: FieldOptions & { least?: number; most?: number } = {}): PropertyDecorator {
  const { least = 1, most = 50 } = options;
  const facts = { least, most };
  return field(options, { type: 'array', items: { type: 'string', format: 'uuid' }, minItems: least, maxItems: most }, [
    IsUuid({ each: true, ...wrong('field-not-id') }),
    ArrayMaxSize(most, wrong('field-not-list', facts)),
    ArrayMinSize(least, wrong('field-not-list', facts)),
    IsArray(wrong('field-not-list', facts)),
    listed,
  ]);
}

/** A list of whole numbers. */
export function WholeListField(
  options: FieldOptions & { least?: number; most?: number; smallest?: number; largest?: number } = {},
): PropertyDecorator {
  const { least = 1, most = 200, smallest = 0, largest = 2_000_000_000 } = options;
  const facts = { least, most };
  const range = { least: smallest, most: largest };
  const items = { type: 'integer', minimum: smallest, maximum: largest } as const;
  return field(options, { type: 'array', items, minItems: least, maxItems: most }, [
    Max(largest, { each: true, ...wrong('field-not-whole', range) }),
    Min(smallest, { each: true, ...wrong('field-not-whole', range) }),
    IsInt({ each: true, ...wrong('field-not-whole', range) }),
    ArrayMaxSize(most, wrong('field-not-list', facts)),
    ArrayMinSize(least, wrong('field-not-list', facts)),
    IsArray(wrong('field-not-list', facts)),
  ]);
}

/** A list of forms, each checked by its own class. */
export function FormListField(
  form: () => new () => object,
  options: FieldOptions & { least?: number; most?: number } = {},
): PropertyDecorator {
  const { least = 1, most = 200 } = options;
  const facts = { least, most };
  return field(options, { type: () => [form()], minItems: least, maxItems: most }, [
    ValidateNested({ each: true, ...wrong('field-not-form') }),
    Type(form),
    ArrayMaxSize(most, wrong('field-not-list', facts)),
    ArrayMinSize(least, wrong('field-not-list', facts)),
    IsArray(wrong('field-not-list', facts)),
  ]);
}
