import { compareDecimals } from '../units/decimals.js';

/** What is measured, named with its unit: `moisture-percent`, `colour-iu`, or whatever else a grade asks for. */
export type Property = string;

/** One line of a grade's specification. */
export interface SpecificationLine {
  readonly property: Property;
  /** The laboratory method, with its edition; a result by another method says nothing about this line. */
  readonly method: string;
  /** Whether a release waits for this result. */
  readonly required: boolean;
  /** Canonical decimal text in the unit of the property; `null` where there is no limit on this side. */
  readonly minimum: string | null;
  readonly maximum: string | null;
}

/** What a grade must be. */
export type Specification = readonly SpecificationLine[];

/** One result of the laboratory. */
export interface Result {
  readonly property: Property;
  readonly method: string;
  /** Canonical decimal text, as reported: it is compared with all its digits and never rounded here. */
  readonly value: string;
}

/** What the results say about one line. */
export interface LineVerdict {
  readonly property: Property;
  readonly method: string;
  readonly required: boolean;
  readonly verdict: 'within' | 'outside' | 'missing';
  /** The results that were compared, in the order given. */
  readonly values: readonly string[];
  /** Methods by which the property was measured instead, where it is missing. */
  readonly otherMethods: readonly string[];
}

export interface Comparison {
  readonly lines: readonly LineVerdict[];
  readonly overall: 'complete-and-within' | 'outside' | 'incomplete';
  /** How limits were judged, to be printed with the verdict. */
  readonly decisionRule: 'simple-acceptance';
}

/**
 * How the results of a sample stand against a specification.
 *
 * The decision rule is simple acceptance: a result within the limits is within, exactly at a limit too, and the
 * uncertainty of the measurement is not taken off. Close to a limit this can be wrong up to every second time (ILAC-G8:09/2019, 4.2.3, guard
 * band of width zero), so the rule is named with the verdict.
 *
 * A result counts for a line only by the line's own method. Of several results for one line each must be within: a retest
 * stands beside the first result and does not clear it; leaving one out is a decision that people make before they ask here. A line
 * that is not required and has no result keeps nothing back; outside is outside, required or not.
 *
 * @returns overall `outside` if any line is, else `incomplete` if a required line is missing, else `complete-and-within`;
 * so a specification without lines is complete
 * @throws RangeError when a value or a limit is not canonical decimal text
 * @example compareWithSpecification([{ property: 'moisture-percent', method: 'loss on drying', value: '0.06' }],
 * [{ property: 'moisture-percent', method: 'loss on drying', required: true, minimum: null, maximum: '0.06' }]).overall
 * // 'complete-and-within'
 */
export function compareWithSpecification(results: readonly Result[], specification: Specification): Comparison {
  const lines = specification.map((line) => verdictOn(line, results));
  return { lines, overall: overallOf(lines), decisionRule: 'simple-acceptance' };
}

function verdictOn(line: SpecificationLine, results: readonly Result[]): LineVerdict {
  const { property, method, required } = line;
  const ofProperty = results.filter((result) => result.property === property);
  const values = ofProperty.filter((result) => result.method === method).map(({ value }) => value);
  const areWithin = values.map((value) => isWithin(value, line));
  if (values.length > 0) {
    const verdict = areWithin.every(Boolean) ? 'within' : 'outside';
    return { property, method, required, verdict, values, otherMethods: [] };
  }
  const otherMethods = [...new Set(ofProperty.map((result) => result.method))];
  return { property, method, required, verdict: 'missing', values, otherMethods };
}

function isWithin(value: string, { minimum, maximum }: SpecificationLine): boolean {
  const isBelow = minimum !== null && compareDecimals(value, minimum) < 0;
  const isAbove = maximum !== null && compareDecimals(value, maximum) > 0;
  return !isBelow && !isAbove;
}

function overallOf(lines: readonly LineVerdict[]): Comparison['overall'] {
  if (lines.some(({ verdict }) => verdict === 'outside')) return 'outside';
  if (lines.some(({ verdict, required }) => verdict === 'missing' && required)) return 'incomplete';
  return 'complete-and-within';
}
