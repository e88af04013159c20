import { Transform } from 'class-transformer';
import { ArrayMaxSize, IsArray, Matches } from '../../platform/web/checks.js';
import { ChoiceField, field, IdField, TextField, wrong } from '../../platform/web/fields.js';
import { KilogramsField } from '../../platform/web/kilograms-field.js';
import { recallSurenesses, type RecallSureness } from '../../recalls/recall-words.js';
import { OpenRecallForm, RecallAnswerForm } from '../../recalls/recall.form.js';
import { OmitType } from '@nestjs/swagger';
import { scopeKeyPattern } from './scope-key.js';

/** The things that a recall is of, as a page sends them: one ticked box comes as one text. */
function ScopesField(): PropertyDecorator {
  const list = { least: 0, most: 50 };
  return field({ optional: true }, { type: 'array', items: { type: 'string', pattern: scopeKeyPattern.source } }, [
    Matches(scopeKeyPattern, { each: true, ...wrong('field-not-list', list) }),
    ArrayMaxSize(50, wrong('field-not-list', list)),
    IsArray(wrong('field-not-list', list)),
    Transform(({ value }: { value: unknown }) => (typeof value === 'string' ? [value] : value)),
  ]);
}

/** What a recall is to be of; nothing yet when the page is opened to choose. */
export class RecallNewQuery {
  @TextField({ optional: true, most: 200, says: 'Any code of the thing' })
  code?: string | null;

  @TextField({ optional: true, most: 120, says: 'Which of several things the code means' })
  meant?: string | null;

  @IdField({ optional: true, says: 'The hold that it begins with' })
  hold?: string | null;

  @IdField({ optional: true, says: 'The complaint that it begins with' })
  complaint?: string | null;

  @ScopesField()
  scopes?: string[] | null;

  /** Of a shift: its dryer or line, as `packing-shift:…`. */
  @TextField({ optional: true, most: 80 })
  place?: string | null;

  /** By the plant's clock. */
  @TextField({ optional: true, most: 40 })
  fromAt?: string | null;

  @TextField({ optional: true, most: 40 })
  untilAt?: string | null;

  /** The choice was sent, so that an empty one is refused. */
  @TextField({ optional: true, most: 10 })
  look?: string | null;

  @ChoiceField(recallSurenesses, { optional: true })
  sureness?: RecallSureness | null;
}

/** A recall or an exercise, opened from the page that shows what it would cover. */
export class OpenOnPageForm extends OmitType(OpenRecallForm, ['scopes']) {
  @ScopesField()
  scopes?: string[] | null;
}

/** A customer's answer as it is keyed in: whole bags in kilograms. */
export class AnswerOnPageForm extends OmitType(RecallAnswerForm, ['bagGrams']) {
  @KilogramsField({ optional: true, most: 1_000_000_000, says: 'Sugar in whole bags' })
  bagGrams?: number | null;
}
