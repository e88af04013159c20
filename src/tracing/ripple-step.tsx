import type { VNode } from 'preact';
import type { Asked } from '../journal/entry-draft.js';
import { Refusal } from '../platform/refusal.js';
import { say } from '../platform/sentences/sentences.js';
import type { FormTrouble } from '../platform/web/form-trouble.js';
import { Act, ActLink } from '../platform/web/kit/act.js';
import { HiddenEntry } from '../platform/web/kit/entries.js';
import { EntryForm } from '../platform/web/kit/entry-form.js';
import type { Viewer } from '../platform/web/request.js';
import type { SentForm, Taking, TakenForScript } from '../platform/web/sent-form.js';
import { Shell } from '../platform/web/shell.js';
import type { CorrectionRipple } from './correction-ripple.js';
import { RippleReadings, RippleSummary, RippleTables } from './ripple-view.js';
import type { Ripple } from './ripple.js';

/** How a page's form is taken whose change is looked at before it is recorded. */
interface RippleStep<Form extends object, Answer> extends Omit<Taking<Form, Answer>, 'act' | 'timeZone'> {
  readonly viewer: Viewer;
  readonly asked: Asked;
  readonly ripple: CorrectionRipple;
  readonly correct: (asked: Asked, form: Form) => Promise<Answer>;
  /** Where the form was filled in. */
  readonly back: string;
  readonly use?: 'tablet' | undefined;
  /** Whether it may change what was packed before; absent: always. What is made just now is one step. */
  readonly mayChangeEarlier?: ((form: Form) => Promise<boolean>) | undefined;
  /** What fields that were left empty meant when the form was first sent: it means the same when it is confirmed. */
  readonly meant?: Readonly<Record<string, string>> | undefined;
}

/**
 * Sent the first time, a form shows what it would change, and a button that records it; what changes nothing that is packed
 * is recorded at once. Sent with the mark of what was shown, it is recorded; where it would now change something else,
 * that is shown instead. What waited on a device is recorded as it stands. Refusals: `look-first`, for script, which then
 * sends the form as a page.
 */
export async function takeByRipple<Form extends object, Answer>(
  sent: SentForm,
  step: RippleStep<Form, Answer>,
): Promise<VNode | TakenForScript | null> {
  const { viewer, asked, ripple, correct, form, times = [], next, says = () => null, again } = step;
  const isLookedAt = async (filled: Form): Promise<boolean> =>
    asked.previewed == null && asked.happening == null && (await (step.mayChangeEarlier?.(filled) ?? true));
  const act = async (filled: Form): Promise<Answer> => {
    if (await isLookedAt(filled)) {
      const found = await ripple.of(asked, (trying) => correct(trying, filled));
      if (found.lots.length + found.pallets.length > 0) throw new LookFirst(found);
    }
    return correct(asked, filled);
  };
  const taking = { form, times, timeZone: viewer.timeZone, next, says };
  const shown = (found: Ripple, trouble: FormTrouble | null = null) =>
    ripplePage(step, { ripple: found, entered: withMeant(sent.entered, step.meant), trouble });
  try {
    return await sent.take({
      ...{ ...taking, act },
      again: (trouble) => {
        if (trouble.code !== 'preview-is-stale') return again(trouble);
        return sent.show({
          ...{ ...taking, again },
          act: (filled) => ripple.of(asked, (trying) => correct(trying, filled)),
          page: (found) => shown(found, trouble),
        });
      },
    });
  } catch (error) {
    if (!(error instanceof LookFirst)) throw error;
    if (sent.isOfScript) throw new Refusal('look-first');
    return sent.shows(shown(error.ripple));
  }
}

type Entered = readonly (readonly [name: string, value: string])[];

function withMeant(entered: Entered, meant: Readonly<Record<string, string>> = {}): Entered {
  const given = entered.filter(([name, value]) => !(name in meant) || value.trim() !== '');
  const left = Object.entries(meant).filter(([name]) => !given.some(([other]) => other === name));
  return [...given, ...left];
}

/** Nothing was recorded: what it would change is to be looked at. */
class LookFirst extends Error {
  constructor(readonly ripple: Ripple) {
    super('what a correction changes is looked at first');
  }
}

interface RippleProps {
  readonly ripple: Ripple;
  readonly entered: Entered;
  readonly trouble: FormTrouble | null;
}

function ripplePage(
  { viewer, back, use }: Pick<RippleStep<object, unknown>, 'viewer' | 'back' | 'use'>,
  { ripple, entered, trouble }: RippleProps,
): VNode {
  return (
    <Shell title={say('ripple-title')} viewer={viewer} use={use}>
      <EntryForm viewer={viewer} action={viewer.path} trouble={trouble}>
        {entered.map(([name, value], place) => (
          <HiddenEntry key={place} name={name} value={value} />
        ))}
        <HiddenEntry name="previewed" value={ripple.mark} />
        <RippleSummary ripple={ripple} />
        <RippleReadings ripple={ripple} timeZone={viewer.timeZone} />
        <p>{say('ripple-nothing-yet')}</p>
        <div class="acts">
          <Act says={say('ripple-act')} tone="careful" />
          <ActLink href={back} says={say('ripple-back')} />
        </div>
      </EntryForm>
      <RippleTables ripple={ripple} />
    </Shell>
  );
}
