import type { VNode } from 'preact';
import { mayDo } from '../platform/actor.js';
import { say } from '../platform/sentences/sentences.js';
import type { FormTrouble } from '../platform/web/form-trouble.js';
import { Act } from '../platform/web/kit/act.js';
import { EntryForm, nameOfField } from '../platform/web/kit/entry-form.js';
import { TextEntry } from '../platform/web/kit/entries.js';
import { Figures } from '../platform/web/kit/figures.js';
import { Table } from '../platform/web/kit/table.js';
import { localText, sayLocally } from '../platform/web/local-text.js';
import type { Viewer } from '../platform/web/request.js';
import { Shell } from '../platform/web/shell.js';
import type { KeptEntryRow } from './kept-entries.js';
import { settlerOf, whatWasMeant, whyKept } from './kept-entry-words.js';

interface KeptEntryProps {
  readonly viewer: Viewer;
  readonly entry: KeptEntryRow;
  readonly trouble: FormTrouble | null;
}

/** What somebody entered and the house could not take: what was meant, why not, and all that was entered. */
export function keptEntryPage({ viewer, entry, trouble }: KeptEntryProps): VNode {
  const { timeZone } = viewer;
  const mayAnswer = mayDo(viewer.actor.roles, 'answer-open-points') && entry.pointId !== null;
  return (
    <Shell title={say('kept-entry-title')} viewer={viewer}>
      <p class="sentence">{sayLocally(whyKept(entry.code), entry.facts, timeZone)}</p>
      <Figures
        of={[
          { label: say('kept-entry-what'), value: say(whatWasMeant(entry.route)) },
          { label: say('kept-entry-happened'), value: localText(entry.happenedAt, timeZone) },
          { label: say('kept-entry-kept'), value: localText(entry.keptAt, timeZone) },
          { label: say('kept-entry-how'), value: howText(entry) },
          { label: say('kept-entry-person'), value: entry.person ?? '–' },
          ...(entry.writer === null ? [] : [{ label: say('kept-entry-written-by'), value: entry.writer }]),
        ]}
      />
      <Table
        caption={say('kept-entry-entered')}
        columns={[{ head: say('kept-entry-field') }, { head: say('kept-entry-value') }]}
        rows={Object.entries(entry.content).map(([field, value]) => ({
          key: field,
          cells: [nameOfField(field), typeof value === 'string' ? value : JSON.stringify(value)],
        }))}
        empty={say('kept-entry-nothing')}
      />
      <Ways viewer={viewer} entry={entry} />
      {entry.explanation === null ? null : (
        <p class="sentence">
          {say('kept-entry-dealt-with')}: {entry.explanation}
        </p>
      )}
      {mayAnswer && entry.explanation === null ? (
        <EntryForm viewer={viewer} action={`/kept-entries/${entry.id}`} trouble={trouble}>
          <TextEntry
            name="explanation"
            label={say('kept-entry-explanation')}
            maxLength={500}
            trouble={trouble}
            isLong
          />
          <Act says={say('kept-entry-close')} />
        </EntryForm>
      ) : null}
      <p>
        <a href="/open-points">{say('kept-entry-to-points')}</a>
      </p>
    </Shell>
  );
}

/** Where the bag or the run is looked at, and where what really happened is entered. */
function Ways({ viewer, entry }: Pick<KeptEntryProps, 'viewer' | 'entry'>): VNode | null {
  const { facts, content, route, address, happenedAt } = entry;
  const bag = text(facts['bag']) ?? text(content['bag']);
  const lineId = /^\/line\/([0-9a-f-]{36})\//.exec(address)?.[1];
  const settings = /\/(lines\/[0-9a-f-]{36}\/settings)$/.exec(address)?.[1];
  const mayEnter = settlerOf(route) === 'quality-officer' && mayDo(viewer.actor.roles, 'tip-bags');
  const late = new URLSearchParams({ openedAt: happenedAt, ...(bag === null ? {} : { bag }) });
  const units = [bag, text(facts['run']) ?? text(content['run'])].filter((unit) => unit !== null);
  const ways = [
    ...units.map((unit) => ({ href: `/thread?code=${encodeURIComponent(unit)}`, says: unit })),
    ...(lineId !== undefined && mayEnter
      ? [{ href: `/line/${lineId}/late?${late.toString()}`, says: say('kept-entry-enter-tip') }]
      : []),
    ...(settings !== undefined && mayDo(viewer.actor.roles, 'run-line')
      ? [{ href: `/${settings}`, says: say('kept-entry-enter-setting') }]
      : []),
  ];
  if (ways.length === 0) return null;
  return (
    <p>
      {say('kept-entry-look')}:{' '}
      {ways.map(({ href, says }, place) => (
        <span key={href}>
          {place === 0 ? '' : ' · '}
          <a href={href}>{says}</a>
        </span>
      ))}
    </p>
  );
}

const text = (value: unknown): string | null => (typeof value === 'string' && value !== '' ? value : null);

function howText({ how, device, sheet, sheetRow }: KeptEntryRow): string {
  return how === 'queued' ? say('kept-entry-queued', { device }) : say('kept-entry-paper', { sheet, row: sheetRow });
}
