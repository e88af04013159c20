import { weighersOfChecks } from '../../fill-weight/checks/weigher-checks.js';
import type { LineCheckRow } from '../../line-checks/line-checks.js';
import { namesOf } from '../../people/people.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { say } from '../../platform/sentences/sentences.js';

/** Who made some checks, by the checks' ids: people by name, or the weigher that sent it. */
export async function checkedBy(from: ReadFrom, checks: readonly LineCheckRow[]): Promise<ReadonlyMap<string, string>> {
  const people = ({ personId, secondPersonId }: LineCheckRow): readonly string[] =>
    [personId, secondPersonId].filter((id) => id !== null);
  const names = await namesOf(from, checks.flatMap(people));
  const weighers = await weighersOfChecks(
    from,
    checks.map(({ id }) => id),
  );
  return new Map(
    checks.map((check) => {
      const weigher = weighers.get(check.id);
      const named = people(check).map((id) => names.get(id) ?? '–');
      return [check.id, weigher === undefined ? named.join(', ') : say('check-by-weigher', { weigher })];
    }),
  );
}
