import type { VNode } from 'preact';
import type { ChangeLine } from '../../disposition/changes-to-look-at.js';
import { actionText, contentText } from '../../journal/entry-text.js';
import { say } from '../../platform/sentences/sentences.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act } from '../../platform/web/kit/act.js';
import { TextEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import { Table, type Column, type TableRow } from '../../platform/web/kit/table.js';
import { localText } from '../../platform/web/local-text.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';

/** So many days are looked back. */
export const changeDays = [1, 3, 7, 30] as const;

interface ChangesProps {
  readonly viewer: Viewer;
  readonly days: number;
  readonly isReviewed: boolean;
  readonly changes: readonly ChangeLine[];
  readonly moreCount: number;
  readonly names: ReadonlyMap<string, string>;
  /** How an entry came that was made away from the server: `queued` or `paper`, by its id. */
  readonly ways: ReadonlyMap<string, string>;
  readonly trouble: FormTrouble | null;
}

/** Late entries and corrections: what, how late, old and new, by whom and why; ticked off when looked at. */
export function changesPage(props: ChangesProps): VNode {
  const { viewer, days, isReviewed, changes, moreCount, trouble } = props;
  const caption = say(isReviewed ? 'changes-reviewed' : 'changes-open', { count: changes.length + moreCount, days });
  const table = (
    <Table caption={caption} columns={columns(isReviewed)} rows={rowsOf(props)} empty={say('changes-none')} />
  );
  return (
    <Shell title={say('changes-title')} viewer={viewer}>
      <p class="sentence">{say('changes-says')}</p>
      <Period days={days} isReviewed={isReviewed} />
      {isReviewed || changes.length === 0 ? (
        table
      ) : (
        <EntryForm viewer={viewer} action={`/quality/changes?days=${days}`} trouble={trouble}>
          {table}
          <TextEntry
            name="note"
            label={say('changes-note')}
            hint={say('changes-note-hint')}
            maxLength={500}
            trouble={trouble}
          />
          <Act says={say('changes-act')} accessKey="l" />
        </EntryForm>
      )}
      {moreCount === 0 ? null : <p class="quiet">{say('changes-more', { count: moreCount })}</p>}
    </Shell>
  );
}

function Period({ days, isReviewed }: Pick<ChangesProps, 'days' | 'isReviewed'>): VNode {
  return (
    <form method="get" action="/quality/changes" class="row">
      <label>
        {say('changes-period')}
        <select name="days">
          {changeDays.map((one) => (
            <option key={one} value={one} selected={one === days}>
              {say('changes-days', { days: one })}
            </option>
          ))}
        </select>
      </label>
      <label>
        {say('changes-which')}
        <select name="state">
          <option value="open" selected={!isReviewed}>
            {say('changes-state-open')}
          </option>
          <option value="reviewed" selected={isReviewed}>
            {say('changes-state-reviewed')}
          </option>
        </select>
      </label>
      <Act says={say('points-show')} tone="plain" />
    </form>
  );
}

function columns(isReviewed: boolean): readonly Column[] {
  return [
    { head: say(isReviewed ? 'changes-looked' : 'changes-tick') },
    { head: say('changes-what') },
    { head: say('changes-late'), align: 'number' },
    { head: say('changes-old-new') },
    { head: say('changes-who') },
    { head: say('changes-reason') },
  ];
}

function rowsOf({ viewer, changes, isReviewed, names, ways, trouble }: ChangesProps): readonly TableRow[] {
  const sent = trouble?.entered['entryIds'];
  const ticked = new Set(typeof sent === 'string' ? [sent] : (sent ?? []));
  return changes.map((change) => ({
    key: String(change.sequence),
    cells: [
      <span key="tick" id={`entry-${change.sequence}`}>
        {isReviewed ? (
          <Review change={change} names={names} timeZone={viewer.timeZone} />
        ) : (
          <label class="tick">
            <input type="checkbox" name="entryIds" value={change.entryId} checked={ticked.has(change.entryId)} />
            <span>{change.sequence}</span>
          </label>
        )}
      </span>,
      <What key="what" change={change} way={ways.get(change.entryId) ?? null} timeZone={viewer.timeZone} />,
      change.lateMinutes === 0 ? '–' : lateText(change.lateMinutes),
      <OldAndNew key="old" change={change} />,
      names.get(change.personId ?? '') ?? say('journal-house'),
      change.reason ?? say('lack-no-reason'),
    ],
  }));
}

function Review({
  change,
  names,
  timeZone,
}: {
  change: ChangeLine;
  names: ChangesProps['names'];
  timeZone: string;
}): VNode {
  const { review } = change;
  return (
    <>
      {change.sequence}: {names.get(review?.personId ?? '') ?? say('journal-house')}
      <br />
      <small>
        {review === null ? '' : localText(review.at, timeZone)}
        {review?.note === null || review === null ? '' : `: ${review.note}`}
      </small>
    </>
  );
}

/** What happened, when, and how the entry came: kept on a device or on paper it is late through nobody's doing. */
function What({ change, way, timeZone }: { change: ChangeLine; way: string | null; timeZone: string }): VNode {
  return (
    <>
      {actionText(change.action)}
      {way === null ? null : <strong> {say(`changes-came-${way}`)}</strong>}
      <br />
      <small>
        {say('changes-times', {
          happened: localText(change.occurredAt, timeZone),
          recorded: localText(change.recordedAt, timeZone),
        })}
      </small>
    </>
  );
}

function OldAndNew({ change }: { readonly change: ChangeLine }): VNode {
  return (
    <small>
      {change.before === null ? null : <div>{say('changes-old', { content: contentText(change.before) })}</div>}
      {change.after === null ? null : <div>{say('changes-new', { content: contentText(change.after) })}</div>}
    </small>
  );
}

/** Minutes, and from an hour on hours with them. */
export function lateText(minutes: number): string {
  if (minutes < 60) return say('changes-minutes', { minutes });
  return say('changes-hours', { hours: Math.floor(minutes / 60), minutes: minutes % 60 });
}
