/**
 * The language of pack code patterns. A pattern is the printed text with tokens in braces:
 *
 * - `{y}` `{yy}` `{yyyy}` year, `{ddd}` day of the year, `{MM}` month, `{DD}` day of the production day;
 * - `{line}` `{shift}` one character each, `{line:2}` `{shift:3}` so many characters (1 to 4), letters and digits;
 * - `{HH}` `{mm}` hour and minute of the coder's clock;
 * - `{bestBefore:DD.MM.YYYY}` the best-before day in any order of `DD`, `MM`, `YY`, `YYYY` with separators; without `DD` the month.
 *
 * Every token has a fixed width, so that a code reads back one way even when its spaces are lost.
 */
export type CodeToken = 'y' | 'yy' | 'yyyy' | 'ddd' | 'MM' | 'DD' | 'line' | 'shift' | 'HH' | 'mm';

/** One piece of a pattern: text as it stands, or a field of fixed width. Best-before days are several fields. */
export type CodePart =
  | { readonly kind: 'literal'; readonly text: string }
  | { readonly kind: 'production'; readonly token: CodeToken; readonly width: number }
  | { readonly kind: 'bestBefore'; readonly token: 'DD' | 'MM' | 'YY' | 'YYYY'; readonly width: number };

/** Why a pattern can't be used. */
export type PatternProblem =
  | 'empty'
  | 'too-long'
  | 'unknown-token'
  | 'token-twice'
  | 'no-day'
  | 'half-a-day'
  | 'half-a-time'
  | 'half-a-best-before';

/** A pattern taken apart, or why it can't be used; `token` names the piece at fault where there is one. */
export type PatternReading =
  | { readonly ok: true; readonly parts: readonly CodePart[] }
  | { readonly ok: false; readonly problem: PatternProblem; readonly token: string | null };

/** No coder prints more in one place; keeps reading cheap. */
const LONGEST_PATTERN = 120;

const WIDTHS: Readonly<Record<string, number>> = { y: 1, yy: 2, yyyy: 4, ddd: 3, MM: 2, DD: 2, HH: 2, mm: 2 };

/**
 * Checks the pattern of the code on a pack format's packs, and takes it apart.
 *
 * It must tell the production day (a year, and the day of the year or month and day), or else a best-before day; hour and minute come
 * together; no token stands twice.
 *
 * @returns the parts in printing order, or the first problem. Never throws.
 * @example
 * readPattern('L{y}{ddd}{line}{shift} {HH}:{mm}').ok // true
 * readPattern('L{ddd}') // { ok: false, problem: 'half-a-day', token: null }
 */
export function readPattern(pattern: string): PatternReading {
  if (pattern.trim() === '') return refused('empty');
  if (pattern.length > LONGEST_PATTERN) return refused('too-long');
  const parts: CodePart[] = [];
  for (const [piece] of pattern.matchAll(/\{[^{}]*\}|[^{}]+|[{}]/g)) {
    const read = readPiece(piece);
    if (read === null) return refused('unknown-token', piece);
    parts.push(...read);
  }
  return judge(parts);
}

/**
 * Why a pattern can't be used, or null where it can.
 *
 * @example
 * patternProblem('L{y}{ddd}') // null
 * patternProblem('L{week}') // 'unknown-token'
 */
export function patternProblem(pattern: string): PatternProblem | null {
  const reading = readPattern(pattern);
  return reading.ok ? null : reading.problem;
}

/**
 * The parts of a pattern that was checked when it was entered.
 *
 * @throws RangeError where it can't be used.
 * @example
 * patternParts('L{y}{ddd}').length // 3
 */
export function patternParts(pattern: string): readonly CodePart[] {
  const reading = readPattern(pattern);
  if (!reading.ok) throw new RangeError(`code pattern "${pattern}": ${reading.problem} ${reading.token ?? ''}`.trim());
  return reading.parts;
}

function readPiece(piece: string): readonly CodePart[] | null {
  if (/^[{}]$/.test(piece)) return null;
  if (!piece.startsWith('{')) return [{ kind: 'literal', text: piece }];
  const [, name = '', detail = ''] = /^\{([A-Za-z]+)(?::([^{}]*))?\}$/.exec(piece) ?? [];
  if (name === 'bestBefore') return bestBeforeParts(detail);
  if (name === 'line' || name === 'shift') {
    if (!/^[1-4]?$/.test(detail)) return null;
    return [{ kind: 'production', token: name, width: detail === '' ? 1 : Number(detail) }];
  }
  const width = WIDTHS[name];
  if (width === undefined || detail !== '') return null;
  return [{ kind: 'production', token: name as CodeToken, width }];
}

function bestBeforeParts(format: string): readonly CodePart[] | null {
  const pieces = format.match(/YYYY|YY|MM|DD|[^A-Za-z\d]+/g) ?? [];
  if (format === '' || pieces.join('') !== format) return null;
  return pieces.map((piece) =>
    piece === 'YYYY' || piece === 'YY' || piece === 'MM' || piece === 'DD'
      ? { kind: 'bestBefore', token: piece, width: piece.length }
      : { kind: 'literal', text: piece },
  );
}

function judge(parts: readonly CodePart[]): PatternReading {
  const names = parts.flatMap((part) => (part.kind === 'literal' ? [] : [`${part.kind} ${part.token}`]));
  const twice = names.find((name, at) => names.indexOf(name) !== at);
  if (twice !== undefined) return refused('token-twice', twice.split(' ')[1] ?? null);
  const has = (...tokens: readonly string[]) => tokens.some((token) => names.includes(token));
  const years = names.filter((name) => /^production y+$/.test(name)).length;
  const hasDay = has('production ddd') || (has('production MM') && has('production DD'));
  if (years > 1) return refused('token-twice', 'y');
  const anyOfDay = years > 0 || has('production ddd', 'production MM', 'production DD');
  if (anyOfDay && !(years === 1 && hasDay)) return refused('half-a-day');
  if (has('production ddd') && has('production MM', 'production DD')) return refused('token-twice', 'ddd');
  if (has('production HH') !== has('production mm')) return refused('half-a-time');
  const hasBestBefore = has('bestBefore YY', 'bestBefore YYYY', 'bestBefore MM', 'bestBefore DD');
  const wholeBestBefore = has('bestBefore YY') !== has('bestBefore YYYY') && has('bestBefore MM');
  if (hasBestBefore && !wholeBestBefore) return refused('half-a-best-before');
  return anyOfDay || hasBestBefore ? { ok: true, parts } : refused('no-day');
}

function refused(problem: PatternProblem, token: string | null = null): PatternReading {
  return { ok: false, problem, token };
}
