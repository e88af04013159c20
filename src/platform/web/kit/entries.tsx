import type { ComponentChildren, VNode } from 'preact';
import type { TestPack } from '../../../core/test-packs/judge-reading.js';
import { say } from '../../sentences/sentences.js';
import type { FormTrouble } from '../form-trouble.js';
import { localOfInstant, localSecondOfInstant } from '../local-time.js';
import { fieldId } from './entry-form.js';

interface EntryProps {
  readonly name: string;
  readonly label: string;
  readonly hint?: string | undefined;
  readonly value?: string | undefined;
  readonly trouble?: FormTrouble | null | undefined;
  readonly required?: boolean | undefined;
  readonly autofocus?: boolean | undefined;
}

/** A field with its label, what it takes, and what was wrong with it. */
function Entry({ name, label, hint, trouble, children }: EntryProps & { readonly children: ComponentChildren }): VNode {
  const wrong = trouble?.fields[name];
  return (
    <div class="field" data-field={name}>
      <label for={fieldId(name)}>
        {label}
        {hint === undefined ? null : <span class="hint">{hint}</span>}
      </label>
      {children}
      <p class="wrong" id={`${fieldId(name)}-wrong`} hidden={wrong === undefined}>
        {wrong}
      </p>
    </div>
  );
}

function entered({ name, value, trouble }: EntryProps): string | undefined {
  const before = trouble?.entered[name];
  return trouble === undefined || trouble === null ? value : typeof before === 'string' ? before : value;
}

function marks({ name, trouble, required, autofocus }: EntryProps): Record<string, string | boolean | undefined> {
  const isWrong = trouble?.fields[name] !== undefined;
  return {
    id: fieldId(name),
    name,
    required,
    autofocus,
    'aria-invalid': isWrong ? 'true' : undefined,
    'aria-describedby': isWrong ? `${fieldId(name)}-wrong` : undefined,
  };
}

interface TextProps extends EntryProps {
  readonly maxLength?: number | undefined;
  /** A code or number that is read letter by letter. */
  readonly isCode?: boolean | undefined;
  /** Several lines. */
  readonly isLong?: boolean | undefined;
  readonly type?: 'text' | 'password' | 'date' | undefined;
  readonly autocomplete?: string | undefined;
  /** What is scanned while it has the focus stays in it: a second person's badge. */
  readonly takesScan?: boolean | undefined;
}

export function TextEntry({
  maxLength,
  isCode,
  isLong,
  type = 'text',
  autocomplete = 'off',
  takesScan,
  ...entry
}: TextProps): VNode {
  const common = {
    ...{ ...marks(entry), maxLength, autocomplete, class: isCode === true ? 'code' : undefined },
    'data-takes-scan': takesScan === true ? '' : undefined,
  };
  return (
    <Entry {...entry}>
      {isLong === true ? (
        <textarea {...common} rows={3}>
          {entered(entry)}
        </textarea>
      ) : (
        <OneLine type={type} value={entered(entry)} common={common} />
      )}
    </Entry>
  );
}

/** One line. A secret is never put back. */
function OneLine({ type, value, common }: LineProps): VNode {
  if (type === 'password') return <input {...common} type="password" />;
  if (type === 'date') return <input {...common} type="date" value={value} />;
  return <input {...common} type="text" value={value} spellcheck={false} />;
}

interface LineProps {
  readonly type: 'text' | 'password' | 'date';
  readonly value: string | undefined;
  readonly common: Record<string, string | number | boolean | undefined>;
}

interface FileProps extends Omit<EntryProps, 'value'> {
  /** Kinds of files that are offered first. */
  readonly accept: string;
}

/** A file of the device. The last field of its form. */
export function FileEntry({ accept, ...entry }: FileProps): VNode {
  return (
    <Entry {...entry}>
      <input {...marks(entry)} type="file" accept={accept} />
    </Entry>
  );
}

interface NumberProps extends EntryProps {
  readonly unit?: string | undefined;
  /** What + and − add, where the page offers them. */
  readonly step?: string | undefined;
  /** What a scale types while it has the focus stays in it. */
  readonly takesScan?: boolean | undefined;
  /** One of a row: Enter goes on to the next that is empty. */
  readonly goesOn?: boolean | undefined;
  /** It is the reading of a test pack, judged while it is entered. */
  readonly testPack?: TestPack | undefined;
}

/** A number, with comma or point. It is a text field: what was typed is never thrown away by the browser. */
export function NumberEntry({ unit, step, takesScan, goesOn, testPack, ...entry }: NumberProps): VNode {
  return (
    <Entry {...entry}>
      <span class="with-unit">
        <input
          {...marks(entry)}
          class="figure"
          type="text"
          inputMode="decimal"
          autocomplete="off"
          maxLength={20}
          value={entered(entry)}
          data-number={step ?? ''}
          data-takes-scan={takesScan === true ? '' : undefined}
          data-goes-on={goesOn === true ? '' : undefined}
          data-known={testPack?.knownMilligrams}
          data-allowed={testPack?.allowedMilligrams}
        />
        {unit === undefined ? null : <span class="unit">{unit}</span>}
      </span>
    </Entry>
  );
}

interface ChoiceProps extends EntryProps {
  readonly choices: readonly { readonly value: string; readonly says: string; readonly about?: string | undefined }[];
  /** Tiles for a few choices on a tablet; a list for many. */
  readonly as?: 'tiles' | 'list' | undefined;
  /** What it means to choose none, in a list where that is allowed. */
  readonly none?: string | undefined;
}

/** One of a few. */
export function ChoiceEntry({ choices, as = 'list', ...entry }: ChoiceProps): VNode {
  return as === 'tiles' ? <Tiles choices={choices} {...entry} /> : <List choices={choices} {...entry} />;
}

function List({ choices, none, ...entry }: ChoiceProps): VNode {
  const chosen = entered(entry);
  return (
    <Entry {...entry}>
      <select {...marks(entry)}>
        {entry.required === true && chosen !== undefined && chosen !== '' ? null : (
          <option value="">{entry.required === true ? say('choose-one') : (none ?? say('choose-none'))}</option>
        )}
        {choices.map(({ value, says, about }) => (
          <option key={value} value={value} selected={value === chosen}>
            {about === undefined ? says : `${says} · ${about}`}
          </option>
        ))}
      </select>
    </Entry>
  );
}

function Tiles({ choices, ...entry }: ChoiceProps): VNode {
  const chosen = entered(entry);
  const wrong = entry.trouble?.fields[entry.name];
  return (
    <fieldset class="tiles" id={fieldId(entry.name)} data-field={entry.name} tabIndex={-1}>
      <legend>
        {entry.label}
        {entry.hint === undefined ? null : <span class="hint">{entry.hint}</span>}
      </legend>
      <div>
        {choices.map(({ value, says, about }) => (
          <label key={value} class="tile">
            <input type="radio" name={entry.name} value={value} checked={value === chosen} required={entry.required} />
            <span>
              {says}
              {about === undefined ? null : <small>{about}</small>}
            </span>
          </label>
        ))}
      </div>
      <p class="wrong" hidden={wrong === undefined}>
        {wrong}
      </p>
    </fieldset>
  );
}

interface TickProps extends EntryProps {
  readonly checked?: boolean | undefined;
}

/** Yes or not. */
export function TickEntry({ checked, ...entry }: TickProps): VNode {
  const { trouble, name } = entry;
  const was = trouble === undefined || trouble === null ? (checked ?? false) : trouble.entered[name] !== undefined;
  const wrong = trouble?.fields[name];
  return (
    <div class="field" data-field={name}>
      <label class="tick">
        <input {...marks(entry)} type="checkbox" checked={was} />
        <span>
          {entry.label}
          {entry.hint === undefined ? null : <span class="hint">{entry.hint}</span>}
        </span>
      </label>
      <p class="wrong" id={`${fieldId(name)}-wrong`} hidden={wrong === undefined}>
        {wrong}
      </p>
    </div>
  );
}

interface TimeProps extends Omit<EntryProps, 'value'> {
  /** An instant to begin with. */
  readonly at?: string | undefined;
  readonly timeZone: string;
  /** For a clock that is compared with another. */
  readonly isToTheSecond?: boolean | undefined;
}

/** A time by the plant's own clock, to the minute. */
export function TimeEntry({ at, timeZone, isToTheSecond = false, ...entry }: TimeProps): VNode {
  const local = isToTheSecond ? localSecondOfInstant : localOfInstant;
  const shown = entered({ ...entry, value: at === undefined ? undefined : local(at, timeZone) });
  return (
    <Entry {...entry}>
      <input {...marks(entry)} type="datetime-local" step={isToTheSecond ? '1' : undefined} value={shown} />
    </Entry>
  );
}

export function HiddenEntry({ name, value }: { readonly name: string; readonly value: string }): VNode {
  return <input type="hidden" name={name} value={value} />;
}
