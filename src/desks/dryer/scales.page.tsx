import type { VNode } from 'preact';
import { mayDo } from '../../platform/actor.js';
import { say } from '../../platform/sentences/sentences.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act, ActLink } from '../../platform/web/kit/act.js';
import { ChoiceEntry, NumberEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import { Table } from '../../platform/web/kit/table.js';
import { localText } from '../../platform/web/local-text.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import { StateMark } from '../../platform/web/state-mark.js';
import type { ScaleStanding } from '../../plant/plant-rows.js';

interface ScalesProps {
  readonly viewer: Viewer;
  readonly scales: readonly ScaleStanding[];
  readonly trouble: FormTrouble | null;
}

/** Which scales may be trusted, and the check with a known weight. */
export function scalesPage({ viewer, scales, trouble }: ScalesProps): VNode {
  return (
    <Shell title={say('scales-title')} viewer={viewer} use="tablet">
      <Table
        caption={say('scales-caption')}
        columns={[
          { head: say('plant-name') },
          { head: say('plant-error'), align: 'number' },
          { head: say('plant-checked') },
          { head: say('plant-due') },
        ]}
        rows={scales.map((standing) => ({ key: standing.scale.id, cells: cellsOf(standing, viewer.timeZone) }))}
      />
      {scales.length > 0 && mayDo(viewer.actor.roles, 'check-scales') ? (
        <EntryForm viewer={viewer} action="/dryer/scales" trouble={trouble}>
          <h2>{say('scales-check')}</h2>
          <ChoiceEntry
            name="scaleId"
            label={say('dryer-scale')}
            required
            as="tiles"
            value={scales.length === 1 ? scales[0]?.scale.id : undefined}
            choices={scales.map(({ scale }) => ({ value: scale.id, says: scale.name, about: scale.code }))}
            trouble={trouble}
          />
          <NumberEntry name="knownGrams" label={say('scales-known')} unit="kg" required trouble={trouble} />
          <NumberEntry name="shownGrams" label={say('scales-shown')} unit="kg" required trouble={trouble} />
          <Act says={say('scales-record')} />
        </EntryForm>
      ) : null}
      <p class="acts">
        <ActLink href="/dryer" says={say('dryer-back')} />
      </p>
      <p class="caution">{say('plant-caution-scale')}</p>
    </Shell>
  );
}

function cellsOf({ scale, lastCheckedAt, dueAt, isOverdue, hasFailed }: ScaleStanding, timeZone: string): VNode[] {
  const mark = isOverdue || hasFailed ? <StateMark state="doubtful" /> : null;
  return [
    <>{`${scale.name} (${scale.code})`}</>,
    <>{`${scale.maximumPermissibleErrorMilligrams / 1_000_000} kg`}</>,
    <>{lastCheckedAt === null ? say('plant-never-checked') : localText(lastCheckedAt, timeZone)}</>,
    <>
      {mark} {dueAt === null ? null : localText(dueAt, timeZone)}
      {isOverdue ? <p>{say('plant-scale-overdue')}</p> : null}
      {hasFailed ? <p>{say('plant-scale-failed')}</p> : null}
    </>,
  ];
}
