import type { VNode } from 'preact';
import { mayDo } from '../../platform/actor.js';
import { say } from '../../platform/sentences/sentences.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act, ActLink } from '../../platform/web/kit/act.js';
import { ChoiceEntry, FileEntry, NumberEntry, TextEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import type { PackWeigherRow } from '../pack-weighers.js';
import type { SavedLayout } from './saved-layout.js';

interface FilesProps {
  readonly viewer: Viewer;
  readonly weigher: PackWeigherRow;
  readonly layout: SavedLayout | null;
  readonly trouble: { readonly of: string; readonly why: FormTrouble } | null;
}

/** Files that a weigher writes: bring one, and say what their columns mean. */
export function filesPage({ viewer, weigher, layout, trouble }: FilesProps): VNode {
  const at = `/set-up/pack-weighers/${weigher.id}`;
  const why = trouble?.of === 'files' ? trouble.why : null;
  const mayBring = mayDo(viewer.actor.roles, 'bring-weight-files');
  return (
    <Shell title={say('files-title', { code: weigher.code })} viewer={viewer}>
      {layout === null ? <p class="sentence">{say('files-no-layout')}</p> : <p>{say('files-says')}</p>}
      {layout === null || !mayBring ? null : (
        <EntryForm viewer={viewer} action={`${at}/files`} trouble={why} id="form-files" carriesFile>
          <h2>{say('files-bring')}</h2>
          <FileEntry
            name="file"
            label={say('files-file')}
            hint={say('files-file-hint')}
            accept=".csv,.txt,.tsv,text/csv,text/plain"
            required
            trouble={why}
          />
          <Act says={say('files-try')} />
        </EntryForm>
      )}
      {mayDo(viewer.actor.roles, 'set-up-plant') ? (
        <LayoutForm viewer={viewer} weigher={weigher} layout={layout} trouble={trouble} />
      ) : null}
      <p class="acts">
        <ActLink href={at} says={say('weigher-back', { code: weigher.code })} />
      </p>
    </Shell>
  );
}

function LayoutForm({ viewer, weigher, layout, trouble }: FilesProps): VNode {
  const why = trouble?.of === 'layout' ? trouble.why : null;
  const entry = (name: keyof SavedLayout) => {
    const code = name.replaceAll(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
    const value = layout?.[name];
    return {
      ...{ name, trouble: why, label: say(`layout-${code}`), hint: say(`layout-${code}-hint`) },
      value: value === undefined || value === null ? undefined : String(value),
    };
  };
  const choices = (family: string, words: readonly string[]) =>
    words.map((value) => ({ value, says: say(`${family}-${value}`) }));
  const zone = layout?.timeZone ?? viewer.timeZone;
  return (
    <EntryForm viewer={viewer} action={`/set-up/pack-weighers/${weigher.id}/layout`} trouble={why} id="form-layout">
      <h2>{say('layout-title')}</h2>
      <p>{say('layout-says')}</p>
      <ChoiceEntry {...entry('separator')} required choices={choices('separator', ['semicolon', 'comma', 'tab'])} />
      <ChoiceEntry {...entry('decimal')} required choices={choices('decimal', ['point', 'comma'])} />
      <NumberEntry {...entry('headerLines')} required />
      <TextEntry {...entry('sequenceColumn')} maxLength={60} />
      <TextEntry {...entry('timeColumn')} required maxLength={60} />
      <TextEntry {...entry('dayColumn')} maxLength={60} />
      <ChoiceEntry {...entry('timeOrder')} required choices={choices('time-order', ['ymd', 'dmy', 'mdy', 'offset'])} />
      <TextEntry {...entry('timeZone')} value={zone} required maxLength={60} />
      <TextEntry {...entry('netColumn')} required maxLength={60} />
      <ChoiceEntry {...entry('unit')} required choices={['g', 'kg', 'mg'].map((value) => ({ value, says: value }))} />
      <TextEntry {...entry('headColumn')} maxLength={60} />
      <TextEntry {...entry('rejectColumn')} maxLength={60} />
      <TextEntry {...entry('rejectWord')} maxLength={30} />
      <TextEntry {...entry('acceptWord')} maxLength={30} />
      <TextEntry {...entry('runColumn')} maxLength={60} />
      <TextEntry {...entry('series')} maxLength={30} />
      <Act says={say('layout-save')} tone={layout === null ? 'asked' : 'plain'} />
    </EntryForm>
  );
}
