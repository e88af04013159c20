/** Entity classes whose rows are facts: inserted once, never changed but for `voided_by`, never deleted. */
const factClasses = new Set<unknown>();

/**
 * Marks an entity as a table of facts. The migration that makes it adds the triggers by `guardFacts`; start-up and a
 * test try update, delete, replace and truncate on each.
 */
export function Fact(): ClassDecorator {
  return (target) => {
    factClasses.add(target);
  };
}

export function isFactClass(target: unknown): boolean {
  return factClasses.has(target);
}
