import { secretFields } from '../platform/web/form-trouble.js';
import type { HouseRequest } from '../platform/web/request.js';
import { ownPath } from './own-path.js';

/** A form that was sent after its session had ended: where to, and what had been entered, without secrets. */
export interface LostForm {
  readonly path: string;
  readonly fields: readonly (readonly [name: string, value: string])[];
}

/** More than a form of this house holds; a larger one is not carried on. */
const mostCharacters = 24_000;

/** What a request without a session had brought; null where it is no plain form of a page, or too large. */
export function lostFormOf(request: HouseRequest): LostForm | null {
  const { method, headers } = request;
  const isForm = (headers['content-type'] ?? '').startsWith('application/x-www-form-urlencoded');
  if (method !== 'POST' || !isForm || !(headers.accept ?? '').includes('text/html')) return null;
  const body = Object.entries((request.body ?? {}) as Record<string, unknown>);
  const entered = body.flatMap(([name, value]) => textsOf(value).map((text) => [name, text] as const));
  const { formKey, seen } = request;
  const own = [
    ...(formKey === undefined ? [] : [['formKey', formKey] as const]),
    ...(seen === undefined ? [] : [['seen', `${seen.subject.kind}:${seen.subject.id}:${seen.sequence}`] as const]),
  ];
  const fields = [...entered.filter(([name]) => !secretFields.has(name) && name !== 'csrf'), ...own];
  const path = ownPath(request.url);
  if (path === '/' || path.startsWith('/sign-')) return null;
  return carried({ path, fields }).length > mostCharacters ? null : { path, fields };
}

/** The form as one hidden field of the sign-in page carries it. */
export function carried(form: LostForm): string {
  return Buffer.from(JSON.stringify([form.path, form.fields])).toString('base64url');
}

/** What the sign-in page carried; null for anything else. */
export function lostFormIn(text: unknown): LostForm | null {
  if (typeof text !== 'string' || text === '' || text.length > mostCharacters) return null;
  try {
    const [path, fields] = JSON.parse(Buffer.from(text, 'base64url').toString('utf8')) as [unknown, unknown];
    if (typeof path !== 'string' || ownPath(path) !== path || !Array.isArray(fields)) return null;
    const isField = (field: unknown): field is [string, string] =>
      Array.isArray(field) && field.length === 2 && field.every((part) => typeof part === 'string');
    return fields.every(isField) ? { path, fields } : null;
  } catch {
    return null;
  }
}

function textsOf(value: unknown): readonly string[] {
  if (typeof value === 'string') return [value];
  return Array.isArray(value) ? value.filter((one): one is string => typeof one === 'string') : [];
}
