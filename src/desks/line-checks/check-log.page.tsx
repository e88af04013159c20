import type { VNode } from 'preact';
import { checkKinds } from '../../line-checks/check-words.js';
import type { LineCheckQuery } from '../../line-checks/line-check.form.js';
import type { LineCheckRow } from '../../line-checks/line-checks.js';
import type { NamedRow } from '../../plant/plant-rows.js';
import { say } from '../../platform/sentences/sentences.js';
import { ChoiceEntry } from '../../platform/web/kit/entries.js';
import { OlderEntries } from '../../platform/web/older-entries.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import { CheckTable } from './check-table.js';

interface CheckLogProps {
  readonly viewer: Viewer;
  readonly query: LineCheckQuery;
  readonly checks: readonly LineCheckRow[];
  /** Who made each check, by its id. */
  readonly by: ReadonlyMap<string, string>;
  readonly lines: readonly NamedRow[];
  readonly older: string | null;
}

/** All checks of the site, newest entry first, by line, kind and result. */
export function checkLogPage({ viewer, query, checks, by, lines, older }: CheckLogProps): VNode {
  const results = ['passed', 'failed'] as const;
  return (
    <Shell title={say('check-log-title')} viewer={viewer}>
      <form method="get" action="/checks" class="search">
        <ChoiceEntry
          name="lineId"
          label={say('check-line-word')}
          value={query.lineId ?? undefined}
          choices={lines.map(({ id, name }) => ({ value: id, says: name }))}
        />
        <ChoiceEntry
          name="kind"
          label={say('check-what')}
          value={query.kind ?? undefined}
          choices={checkKinds.map((kind) => ({ value: kind, says: say(`check-kind-${kind}`) }))}
        />
        <ChoiceEntry
          name="result"
          label={say('check-result')}
          value={query.result ?? undefined}
          choices={results.map((result) => ({ value: result, says: say(`check-${result}`) }))}
        />
        {query.planId == null ? null : <input type="hidden" name="planId" value={query.planId} />}
        <button type="submit">{say('points-show')}</button>
      </form>
      <CheckTable
        caption={say('check-log-caption')}
        checks={checks}
        by={by}
        timeZone={viewer.timeZone}
        empty={say('check-log-none')}
      />
      <OlderEntries path={pathOf(query)} older={older} />
    </Shell>
  );
}

function pathOf({ lineId, planId, kind, result }: LineCheckQuery): string {
  const chosen = Object.entries({ lineId, planId, kind, result }).filter(
    (one): one is [string, string] => one[1] != null,
  );
  return chosen.length === 0 ? '/checks' : `/checks?${new URLSearchParams(chosen).toString()}`;
}
