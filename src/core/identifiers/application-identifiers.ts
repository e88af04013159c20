/** What the value of an application identifier is checked for, besides its characters and length. */
export type ElementCheck = 'check-digit' | 'date' | 'production-time';

/** One GS1 application identifier that a packing house prints or meets. */
export interface ApplicationIdentifier {
  readonly ai: string;
  /** The data title that may be printed beside the value. */
  readonly title: string;
  /** Digits alone, or GS1 character set 82. */
  readonly kind: 'digits' | 'text';
  /** Fewest and most characters of the value, both inclusive. */
  readonly length: readonly [number, number];
  readonly check: ElementCheck | null;
  /** Whether a separator must follow, unless it stands last. */
  readonly needsSeparator: boolean;
  /** Alternatives: all identifiers of at least one group must stand on the same unit. Empty: none needed. */
  readonly needs: readonly (readonly string[])[];
  /** Identifiers that must not stand on the same unit. */
  readonly excludes: readonly string[];
  /** Whether a Digital Link may carry it behind the question mark. */
  readonly mayBeAttribute: boolean;
}

const NO_RULES = { check: null, needs: [], excludes: [], mayBeAttribute: true } as const;
const A_TRADE_ITEM = [['01'], ['02'], ['03'], ['8006'], ['8026']];

// Values of the whole table: GS1 Barcode Syntax Dictionary, release 2026-01-27, Apache-2.0. Identifiers that are named as partners but
// are no row of this table (03, 235, 255, 426, 4307, 8006, 8020, 8026) are never met with `ok`, because an unknown one is refused.
const ROWS: readonly ApplicationIdentifier[] = [
  fixedDigits('00', 'SSCC', 18, { check: 'check-digit' }),
  fixedDigits('01', 'GTIN', 14, { check: 'check-digit', excludes: ['255', '37'] }),
  fixedDigits('02', 'CONTENT', 14, { check: 'check-digit', needs: [['37']], excludes: ['01', '03'] }),
  text('10', 'BATCH/LOT', 20, { needs: A_TRADE_ITEM }),
  fixedDigits('11', 'PROD DATE', 6, { check: 'date', needs: A_TRADE_ITEM }),
  fixedDigits('13', 'PACK DATE', 6, { check: 'date', needs: A_TRADE_ITEM }),
  fixedDigits('15', 'BEST BEFORE or BEST BY', 6, { check: 'date', needs: A_TRADE_ITEM }),
  fixedDigits('16', 'SELL BY', 6, { check: 'date', needs: A_TRADE_ITEM }),
  fixedDigits('17', 'USE BY or EXPIRY', 6, {
    check: 'date',
    needs: [['01'], ['02'], ['03'], ['255'], ['8006'], ['8026']],
  }),
  fixedDigits('20', 'VARIANT', 2, { needs: A_TRADE_ITEM }),
  text('21', 'SERIAL', 20, { needs: [['01'], ['03'], ['8006']], excludes: ['235'], mayBeAttribute: false }),
  text('22', 'CPV', 20, { needs: [['01']], mayBeAttribute: false }),
  text('240', 'ADDITIONAL ID', 30, { needs: A_TRADE_ITEM }),
  text('241', 'CUST. PART No.', 30, { needs: A_TRADE_ITEM }),
  text('254', 'GLN EXTENSION COMPONENT', 20, { needs: [['414']], mayBeAttribute: false }),
  count('30', 'VAR. COUNT', { needs: [['01'], ['02']] }),
  ...weights('310', 'NET WEIGHT (kg)', [['01'], ['02']]),
  ...weights('330', 'GROSS WEIGHT (kg)', [['00'], ['01']]),
  count('37', 'COUNT', {
    needs: [
      ['00', '02'],
      ['00', '8026'],
    ],
  }),
  text('400', 'ORDER NUMBER', 30, {}),
  { ...fixedDigits('402', 'GSIN', 17, { check: 'check-digit' }), needsSeparator: true },
  text('403', 'ROUTE', 30, { needs: [['00']] }),
  fixedDigits('410', 'SHIP TO LOC', 13, { check: 'check-digit' }),
  fixedDigits('411', 'BILL TO', 13, { check: 'check-digit' }),
  fixedDigits('412', 'PURCHASE FROM', 13, { check: 'check-digit' }),
  fixedDigits('413', 'SHIP FOR LOC', 13, { check: 'check-digit' }),
  fixedDigits('414', 'LOC No.', 13, { check: 'check-digit' }),
  fixedDigits('415', 'PAY TO', 13, { check: 'check-digit', needs: [['8020']] }),
  fixedDigits('416', 'PROD/SERV LOC', 13, { check: 'check-digit' }),
  fixedDigits('417', 'PARTY', 13, { check: 'check-digit' }),
  text('420', 'SHIP TO POST', 20, { excludes: ['421'] }),
  {
    ...text('8008', 'PROD TIME', 12, { needs: [['01'], ['02'], ['03']] }),
    kind: 'digits',
    length: [8, 12],
    check: 'production-time',
  },
  text('90', 'INTERNAL', 30, {}),
  ...['91', '92', '93', '94', '95', '96', '97', '98', '99'].map((ai) => text(ai, 'INTERNAL', 90, {})),
];

const BY_AI: ReadonlyMap<string, ApplicationIdentifier> = new Map(ROWS.map((row) => [row.ai, row]));

/**
 * What GS1 says about an application identifier; null where it is none of those that this table holds.
 *
 * @example
 * applicationIdentifier('10')?.title // 'BATCH/LOT'
 */
export function applicationIdentifier(ai: string): ApplicationIdentifier | null {
  return BY_AI.get(ai) ?? null;
}

/**
 * The application identifier at the front of a run of data (two to four digits; none is the beginning of another); null where none is.
 *
 * @example
 * leadingApplicationIdentifier('10A61').ai // '10'
 */
export function leadingApplicationIdentifier(data: string): ApplicationIdentifier | null {
  return BY_AI.get(data.slice(0, 2)) ?? BY_AI.get(data.slice(0, 3)) ?? BY_AI.get(data.slice(0, 4)) ?? null;
}

/**
 * All identifiers of the table, in the order of their numbers.
 *
 * @example
 * applicationIdentifiers().length // 52
 */
export function applicationIdentifiers(): readonly ApplicationIdentifier[] {
  return ROWS;
}

type Rules = Partial<Pick<ApplicationIdentifier, 'check' | 'needs' | 'excludes' | 'mayBeAttribute'>>;

function fixedDigits(ai: string, title: string, digits: number, rules: Rules): ApplicationIdentifier {
  return { ...NO_RULES, ai, title, kind: 'digits', length: [digits, digits], needsSeparator: false, ...rules };
}

function count(ai: string, title: string, rules: Rules): ApplicationIdentifier {
  return { ...NO_RULES, ai, title, kind: 'digits', length: [1, 8], needsSeparator: true, ...rules };
}

function text(ai: string, title: string, longest: number, rules: Rules): ApplicationIdentifier {
  return { ...NO_RULES, ai, title, kind: 'text', length: [1, longest], needsSeparator: true, ...rules };
}

/** One identifier per number of decimals; two of them on one unit contradict each other. */
function weights(stem: string, title: string, needs: ApplicationIdentifier['needs']): readonly ApplicationIdentifier[] {
  const family = ['0', '1', '2', '3', '4', '5'].map((decimals) => stem + decimals);
  return family.map((ai) => fixedDigits(ai, title, 6, { needs, excludes: family.filter((other) => other !== ai) }));
}
