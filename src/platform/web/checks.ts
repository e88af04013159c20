import {
  arrayMaxSize,
  arrayMinSize,
  isArray,
  isBoolean,
  isIn,
  isInt,
  isString,
  isUUID,
  length,
  matches,
  max,
  min,
  registerDecorator,
  ValidatorConstraint,
  type ValidationArguments,
  type ValidationOptions,
  type ValidatorConstraintInterface,
} from 'class-validator';

/** A check of one field. `limits` are what the value is held against. */
export type Check<Limits extends readonly unknown[]> = (...given: [...Limits, ValidationOptions]) => PropertyDecorator;

/**
 * A check that the fields of all forms share. The library's own decorators keep a class for every field that they stand at: thousands
 * of them, a kilobyte each.
 */
export function sharedCheck<Limits extends readonly unknown[]>(
  name: string,
  holds: (value: unknown, ...limits: Limits) => boolean,
): Check<Limits> {
  @ValidatorConstraint({ name })
  class SharedCheck implements ValidatorConstraintInterface {
    validate(value: unknown, stands?: ValidationArguments): boolean {
      return holds(value, ...((stands?.constraints ?? []) as unknown as Limits));
    }
  }
  return (...given) => {
    const constraints = given.slice(0, -1);
    const options = given.at(-1) as ValidationOptions;
    return (target, property) => {
      const propertyName = String(property);
      registerDecorator({
        name,
        target: target.constructor,
        propertyName,
        options,
        constraints,
        validator: SharedCheck,
      });
    };
  };
}

export const IsString = sharedCheck('isString', isString);
export const IsBoolean = sharedCheck('isBoolean', isBoolean);
export const IsInt = sharedCheck('isInt', isInt);
export const IsArray = sharedCheck('isArray', (value) => isArray(value));
export const IsUuid = sharedCheck('isUuid', (value) => isUUID(value, 'all'));
export const IsIn = sharedCheck('isIn', (value, choices: readonly unknown[]) => isIn(value, choices));
export const Length = sharedCheck('isLength', (value, least: number, most: number) => length(value, least, most));
export const Matches = sharedCheck('matches', (value, pattern: RegExp) => matches(value as string, pattern));
export const Min = sharedCheck('min', (value, least: number) => min(value, least));
export const Max = sharedCheck('max', (value, most: number) => max(value, most));
export const ArrayMinSize = sharedCheck('arrayMinSize', (value, least: number) =>
  arrayMinSize(value as unknown[], least),
);
export const ArrayMaxSize = sharedCheck('arrayMaxSize', (value, most: number) =>
  arrayMaxSize(value as unknown[], most),
);
