import type { VNode } from 'preact';
import { classText, heldPartText } from '../../tracing/holds.page.js';
import type { HoldLine } from '../../disposition/holds.js';
import type { ProofWay } from '../../people/prove-again.js';
import { mayDo } from '../../platform/actor.js';
import { say } from '../../platform/sentences/sentences.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act } from '../../platform/web/kit/act.js';
import { ChoiceEntry, TextEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import { localText } from '../../platform/web/local-text.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import { StateMark } from '../../platform/web/state-mark.js';
import { RecallsBegun } from '../recalls/recalls-begun.js';
import type { FileTrouble } from './file-trouble.js';
import type { HoldFile } from './hold-file.js';
import { Narrowings } from './narrowings.js';
import { ProofEntries } from './proof-entries.js';
import { ReachTables } from './reach-tables.js';

interface HoldFileProps extends HoldFile {
  readonly viewer: Viewer;
  readonly trouble: FileTrouble | null;
}

/** An open hold: what it reaches now, its class, and its lifting. */
export function holdFilePage({ viewer, trouble, ...file }: HoldFileProps): VNode {
  const { hold, preview, narrowings, sequence, way } = file;
  const mayLift = mayDo(viewer.actor.roles, 'lift-holds') && hold.liftedAt === null;
  const box = { viewer, hold, seen: { kind: 'hold', id: hold.id, sequence } };
  return (
    <Shell title={say('hold-title', { hold: hold.number })} viewer={viewer}>
      {trouble?.changed ?? null}
      <HoldFacts hold={hold} subject={preview?.subject ?? null} timeZone={viewer.timeZone} />
      {preview === null ? null : <ReachTables preview={preview} />}
      <RecallsBegun viewer={viewer} origin={{ kind: 'hold', id: hold.id }} recalls={file.recalls} />
      <Narrowings viewer={viewer} hold={hold} narrowings={narrowings} mayNarrow={mayLift} />
      {mayLift ? <ClassBox {...box} trouble={trouble?.of === 'class' ? trouble.form : null} /> : null}
      {mayLift ? <LiftBox {...box} way={way} trouble={trouble?.of === 'lift' ? trouble.form : null} /> : null}
      {hold.liftedAt === null && !mayLift ? <p class="quiet">{say('hold-lift-by-quality')}</p> : null}
    </Shell>
  );
}

interface HoldFactsProps {
  readonly hold: HoldLine;
  readonly subject: string | null;
  readonly timeZone: string;
}

function HoldFacts({ hold, subject, timeZone }: HoldFactsProps): VNode {
  return (
    <section class="card">
      <p>{hold.liftedAt === null ? <StateMark state="on-hold" /> : say('hold-lifted')}</p>
      <p class="sentence">
        {subject === null ? '' : `${heldText(hold, subject, timeZone)}: `}
        {hold.reason}
      </p>
      <dl class="facts">
        <dt>{say('holds-column-class')}</dt>
        <dd>{hold.classReason === null ? classText(hold) : `${classText(hold)}: ${hold.classReason}`}</dd>
        <dt>{say('holds-column-placed')}</dt>
        <dd>{localText(hold.placedAt, timeZone)}</dd>
        {hold.liftedAt === null ? null : (
          <>
            <dt>{say('hold-lifted-at')}</dt>
            <dd>{`${localText(hold.liftedAt, timeZone)}: ${hold.liftReason ?? ''}`}</dd>
          </>
        )}
      </dl>
    </section>
  );
}

/** A shift is named by its day already. */
function heldText(hold: HoldLine, subject: string, timeZone: string): string {
  return hold.scopeKind === 'packing-run' ? heldPartText(hold, subject, timeZone) : subject;
}

interface BoxProps {
  readonly viewer: Viewer;
  readonly hold: HoldLine;
  readonly seen: { readonly kind: string; readonly id: string; readonly sequence: number };
  readonly trouble: FormTrouble | null;
}

function ClassBox({ viewer, hold, seen, trouble }: BoxProps): VNode {
  return (
    <section class="card" aria-labelledby="class">
      <h2 id="class">{say('hold-class-head')}</h2>
      <p>{say('hold-class-says')}</p>
      <EntryForm
        viewer={viewer}
        id="class-form"
        action={`/quality/holds/${hold.id}/class`}
        trouble={trouble}
        seen={seen}
      >
        <ChoiceEntry
          name="hazard"
          label={say('hold-place-class')}
          as="tiles"
          choices={(['safety', 'quality'] as const)
            .filter((hazard) => hazard !== hold.hazardSet)
            .map((hazard) => ({
              value: hazard,
              says: say(`hazard-${hazard}`),
              about: say(`hazard-${hazard}-covers`),
            }))}
          trouble={trouble}
          required
        />
        <TextEntry name="classReason" label={say('hold-class-reason')} maxLength={1000} trouble={trouble} required />
        <Act says={say('hold-class-act')} tone={hold.hazardSet === null ? 'asked' : 'plain'} />
      </EntryForm>
    </section>
  );
}

function LiftBox({ viewer, hold, seen, trouble, way }: BoxProps & { readonly way: ProofWay }): VNode {
  return (
    <section class="card" aria-labelledby="lift">
      <h2 id="lift">{say('hold-lift-head')}</h2>
      <p>{say('hold-lift-says')}</p>
      <EntryForm viewer={viewer} id="lift-form" action={`/quality/holds/${hold.id}/lift`} trouble={trouble} seen={seen}>
        <TextEntry
          name="liftReason"
          label={say('hold-lift-reason')}
          hint={say('hold-lift-reason-hint')}
          maxLength={1000}
          trouble={trouble}
          isLong
          required
        />
        <ProofEntries way={way} trouble={trouble} />
        <Act says={say('hold-lift-act')} tone="careful" />
      </EntryForm>
    </section>
  );
}
