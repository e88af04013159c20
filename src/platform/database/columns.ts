import { Column, type ColumnOptions, ForeignKey, PrimaryColumn, type ValueTransformer } from 'typeorm';
import { toWhole } from './stored-values.js';

/** Instants are 24 characters of UTC text, so that both databases sort and compare them alike. */
const instantPattern = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z$/;
const dayPattern = /^\d{4}-\d\d-\d\d$/;
const decimalPattern = /^-?\d+(\.\d+)?$/;

const checkedText = (pattern: RegExp, what: string): ValueTransformer => ({
  from: (stored: string | null) => stored,
  to: (value: unknown) => {
    // A query by `In`, `LessThan` and the like passes an operator through.
    if (typeof value === 'string' && !pattern.test(value)) throw new RangeError(`not ${what}: ${value}`);
    return value;
  },
});

const wholeNumber: ValueTransformer = {
  from: (stored: string | number | null) => (stored === null ? null : toWhole(stored)),
  to: (value: unknown) => (typeof value === 'number' ? toWhole(value) : value),
};

/** The row's own id. */
export const IdColumn = (): PropertyDecorator => PrimaryColumn({ type: 'varchar' });

/** An id of a row elsewhere, or a short text of one line. */
export const WordColumn = (options: ColumnOptions = {}): PropertyDecorator => Column({ type: 'varchar', ...options });

/** A longer text. */
export const TextColumn = (options: ColumnOptions = {}): PropertyDecorator => Column({ type: 'text', ...options });

/** An instant, fixed-width UTC text. Property names end in `At`. */
export const InstantColumn = (options: ColumnOptions = {}): PropertyDecorator =>
  Column({ type: 'varchar', transformer: checkedText(instantPattern, 'an instant'), ...options });

/** A day, `YYYY-MM-DD`. Property names end in `On`. */
export const DayColumn = (options: ColumnOptions = {}): PropertyDecorator =>
  Column({ type: 'varchar', transformer: checkedText(dayPattern, 'a day'), ...options });

/** A decimal kept as the text that was given, so that 0.060 stays 0.060 and nothing is rounded. */
export const DecimalColumn = (options: ColumnOptions = {}): PropertyDecorator =>
  Column({ type: 'varchar', transformer: checkedText(decimalPattern, 'a decimal'), ...options });

/** A count or a mass that stays below 2^31 (2 147 kg in grams is 2.1 million: well inside). */
export const WholeColumn = (options: ColumnOptions = {}): PropertyDecorator => Column({ type: 'integer', ...options });

/** A whole number up to 2^53: cumulative grams, sums, sums of squares. */
export const BigWholeColumn = (options: ColumnOptions = {}): PropertyDecorator =>
  Column({ type: 'bigint', transformer: wholeNumber, ...options });

/** Yes or no. */
export const FlagColumn = (options: ColumnOptions = {}): PropertyDecorator => Column({ type: 'boolean', ...options });

/** Bytes. The data source puts the database's own type in the place of `blob`. */
export const BytesColumn = (options: ColumnOptions = {}): PropertyDecorator => Column({ type: 'blob', ...options });

/** The correction that made this fact row void: the id of its journal entry; null while the row is good. */
export const VoidedByColumn = (): PropertyDecorator => Column({ type: 'varchar', nullable: true, default: null });

/** The id of a row that stands upstream, with its foreign key. */
export const RefColumn =
  (upstream: () => new () => object, options: ColumnOptions = {}): PropertyDecorator =>
  (target, property) => {
    ForeignKey(upstream)(target, property);
    Column({ type: 'varchar', ...options })(target, property);
  };
