import { namesOf } from '../people/people.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { SentenceFacts } from '../platform/refusal.js';

/** Facts that hold a person's id: their names are kept in one place only, and said when a sentence is read. */
const personFacts = ['tippedBy', 'heldBy', 'keptBy'] as const;

/** What points of before did not say. */
const tipUnsaid = { tipWho: 'tip-who-unsaid' };

interface WithFacts {
  readonly facts: SentenceFacts;
  readonly cause?: string;
  readonly personId?: string | null;
}

/** The same rows, with the names of people in the place of their ids among the facts. */
export async function withNames<Row extends WithFacts>(from: ReadFrom, rows: readonly Row[]): Promise<Row[]> {
  const filled = rows.map((row) => ({ ...row, facts: { ...factsByCause(row), ...row.facts } }));
  const ids = filled.flatMap(({ facts }) => personFacts.map((name) => facts[name]));
  const names = await namesOf(
    from,
    ids.filter((id) => typeof id === 'string'),
  );
  return filled.map((row) => {
    const people = personFacts.flatMap((name) => {
      const said = names.get(String(row.facts[name]));
      return said === undefined ? [] : [[name, said] as const];
    });
    return people.length === 0 ? row : { ...row, facts: { ...row.facts, ...Object.fromEntries(people) } };
  });
}

function factsByCause({ cause = '', personId = null }: WithFacts): SentenceFacts {
  if (cause.startsWith('entry-kept-')) return { keptBy: personId };
  return cause.startsWith('happened-') ? tipUnsaid : {};
}
