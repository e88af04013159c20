/** What is checked at a line. How each is named is common practice, no source. */
export const checkKinds = [
  'metal-detection',
  'sieve',
  'magnet',
  'seal',
  'printed-code',
  'torn-bag',
  'weigher',
  'rejecter',
] as const;
export type CheckKind = (typeof checkKinds)[number];

/** What makes a check due besides the clock. */
export const checkEvents = ['run-start', 'code-change', 'film-change', 'shift-start'] as const;
export type CheckEvent = (typeof checkEvents)[number];

/** What a metal detector is tested with. */
export const testMaterials = ['ferrous', 'non-ferrous', 'stainless'] as const;
export type TestMaterial = (typeof testMaterials)[number];

/** What was done at once when a check failed. Our own list (common practice, no source). */
export const checkActions = [
  'line-stopped',
  'adjusted',
  'checked-again',
  'bag-set-aside',
  'quality-called',
  'other',
] as const;
export type CheckAction = (typeof checkActions)[number];

/**
 * One thing that a check looks at, as the plant entered it: a test piece with its sphere, a test pack with its known
 * weight, or a point to look at, which has neither.
 */
export interface TestPiece {
  /** Short, unique within the plan. */
  readonly code: string;
  readonly says: string;
  readonly material: TestMaterial | null;
  readonly sphereMicrometres: number | null;
  readonly knownMilligrams: number | null;
  /** How far the reading may be off the known weight, exactly so much too. */
  readonly allowedMilligrams: number | null;
}

/** What was found with one piece. */
export interface PieceResult {
  readonly code: string;
  readonly passed: boolean;
  readonly measuredMilligrams: number | null;
}
