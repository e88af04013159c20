import { ValidationPipe, type ValidationError } from '@nestjs/common';
import { BadForm, type FieldProblem, type SentenceFacts } from '../refusal.js';

/** Checks what comes in against its form: unknown fields are refused, each field says what it takes. */
export function formPipe(): ValidationPipe {
  return new ValidationPipe({
    transform: true,
    whitelist: true,
    forbidNonWhitelisted: true,
    forbidUnknownValues: true,
    stopAtFirstError: true,
    exceptionFactory: (errors) => new BadForm(errors.flatMap((error) => problemsOf(error, ''))),
  });
}

function problemsOf(error: ValidationError, prefix: string): readonly FieldProblem[] {
  const field = prefix === '' ? error.property : `${prefix}.${error.property}`;
  const nested = (error.children ?? []).flatMap((child) => problemsOf(child, field));
  const [name, message] = Object.entries(error.constraints ?? {})[0] ?? [];
  if (name === undefined || message === undefined) return nested;
  if (name === 'whitelistValidation') return [{ field, code: 'field-unknown', facts: {} }];
  if (error.value === undefined || error.value === null) return [{ field, code: 'field-missing', facts: {} }];
  const facts = (error.contexts?.[name] ?? {}) as SentenceFacts;
  return [{ field, code: message.startsWith('field-') ? message : 'field-not-form', facts }, ...nested];
}
