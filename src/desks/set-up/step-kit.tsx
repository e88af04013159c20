import type { ComponentChildren, VNode } from 'preact';
import { say } from '../../platform/sentences/sentences.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act } from '../../platform/web/kit/act.js';
import { NumberEntry, TextEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import type { Viewer } from '../../platform/web/request.js';
import type { SetUpState } from './set-up-state.js';

/** What the form of a step knows. */
export interface StepFormProps {
  readonly viewer: Viewer;
  readonly state: SetUpState;
  /** Which of the step's forms was refused (its address), and why. */
  readonly trouble: { readonly of: string; readonly why: FormTrouble } | null;
}

interface StepFormFrameProps extends StepFormProps {
  readonly to: string;
  readonly title: string;
  readonly says: string;
  readonly children: (why: FormTrouble | null) => ComponentChildren;
}

/** A form of a step with its heading and its act; what was refused is shown in the form that it came from. */
export function StepForm({ viewer, trouble, to, title, says, children }: StepFormFrameProps): VNode {
  const why = trouble?.of === to ? trouble.why : null;
  return (
    <EntryForm viewer={viewer} action={`/set-up/${to}`} trouble={why} id={`form-${to.replaceAll('/', '-')}`}>
      <h2>{say(title)}</h2>
      {children(why)}
      <Act says={say(says)} />
    </EntryForm>
  );
}

interface FieldProps {
  readonly name: string;
  readonly why: FormTrouble | null;
  readonly value?: string | undefined;
  readonly isOptional?: boolean | undefined;
  readonly isCode?: boolean | undefined;
  readonly isLong?: boolean | undefined;
  readonly unit?: string | undefined;
}

/** A text of the set-up: its label and its example stand in the catalogue under its name. */
export function Text({ name, why, value, isOptional, isCode, isLong }: FieldProps): VNode {
  return (
    <TextEntry
      name={name}
      label={say(`set-up-${dashed(name)}`)}
      hint={say(`set-up-${dashed(name)}-hint`)}
      value={value}
      required={isOptional !== true}
      isCode={isCode}
      isLong={isLong}
      maxLength={isLong === true ? 4000 : 120}
      trouble={why}
    />
  );
}

/** A number of the set-up with its unit. */
export function Amount({ name, why, value, isOptional, unit }: FieldProps): VNode {
  return (
    <NumberEntry
      name={name}
      label={say(`set-up-${dashed(name)}`)}
      hint={say(`set-up-${dashed(name)}-hint`)}
      value={value}
      unit={unit}
      required={isOptional !== true}
      trouble={why}
    />
  );
}

function dashed(name: string): string {
  return name.replaceAll(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
}
