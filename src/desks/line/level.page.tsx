import type { VNode } from 'preact';
import type { HopperLevel } from '../../hopper/hopper-level.js';
import { binContents } from '../../hopper/hopper.form.js';
import { say } from '../../platform/sentences/sentences.js';
import { roundKilogramsText } from '../../platform/web/figures-text.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act } from '../../platform/web/kit/act.js';
import { ChoiceEntry, NumberEntry, TextEntry, TickEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import type { Viewer } from '../../platform/web/request.js';
import { ActPage } from './act.page.js';
import type { LineNow } from './line-rows.js';
import { choicesOf } from './tip.page.js';

type Named = readonly { readonly id: string; readonly name: string }[];

export type LevelWay = 'seen' | 'run-down' | 'empty';

interface LevelProps {
  readonly viewer: Viewer;
  readonly at: LineNow;
  readonly level: HopperLevel | null;
  readonly people: Named;
  readonly wrong: { readonly way: LevelWay; readonly trouble: FormTrouble } | null;
}

/** What somebody saw in the hopper, beside what is expected. */
export function levelPage(props: LevelProps): VNode {
  const { viewer, at, level } = props;
  const text = roundKilogramsText;
  return (
    <ActPage viewer={viewer} at={at} title={say('line-level')} startsAtBack>
      {level === null ? null : (
        <p class="sentence">
          {say('level-expected', {
            kilograms: text(level.grams),
            lower: text(level.lowerGrams),
            upper: text(level.upperGrams),
          })}
        </p>
      )}
      <EmptyForm {...props} />
      <RunDownForm {...props} />
      <SeenForm {...props} />
    </ActPage>
  );
}

function troubleOf({ wrong }: LevelProps, way: LevelWay): FormTrouble | null {
  return wrong?.way === way ? wrong.trouble : null;
}

/** Two people looked in with the flow stopped: the only thing that cuts the thread. */
export function EmptyForm(props: LevelProps): VNode {
  const { viewer, at, people } = props;
  const trouble = troubleOf(props, 'empty');
  return (
    <section class="card">
      <h2>{say('level-empty-title')}</h2>
      <p class="caution">{say('caution-hopper')}</p>
      <EntryForm viewer={viewer} action={`/line/${at.line.id}/level/empty`} trouble={trouble} id="empty">
        <TickEntry name="isFlowStopped" label={say('field-flow-stopped')} trouble={trouble} />
        <TextEntry
          name="how"
          label={say('field-how-looked')}
          value={say('field-how-looked-usual')}
          maxLength={200}
          trouble={trouble}
        />
        <div class="side-by-side">
          <NumberEntry name="residueGrams" label={say('field-residue')} unit="kg" required trouble={trouble} />
          {at.run === null ? null : (
            <NumberEntry name="packCount" label={say('field-counter')} unit={say('unit-packs')} trouble={trouble} />
          )}
        </div>
        <ChoiceEntry
          name="secondPersonId"
          label={say('field-second-person')}
          choices={choicesOf(people)}
          required
          trouble={trouble}
        />
        {trouble?.code === 'empty-questioned' ? (
          <TickEntry name="happened" label={say('field-empty-all-the-same')} trouble={trouble} />
        ) : null}
        <Act says={say('level-empty-act')} />
      </EntryForm>
    </section>
  );
}

function RunDownForm(props: LevelProps): VNode {
  const trouble = troubleOf(props, 'run-down');
  return (
    <section class="card">
      <h2>{say('level-run-down-title')}</h2>
      <EntryForm
        viewer={props.viewer}
        action={`/line/${props.at.line.id}/level/run-down`}
        trouble={trouble}
        id="run-down"
      >
        <NumberEntry name="atMostGrams" label={say('field-at-most')} unit="kg" required trouble={trouble} />
        <Act says={say('level-run-down-act')} tone="plain" />
      </EntryForm>
    </section>
  );
}

function SeenForm(props: LevelProps): VNode {
  const trouble = troubleOf(props, 'seen');
  const ways = ['probe', 'load-cell', 'sight-glass'].map((value) => ({ value, says: say(`level-${value}`) }));
  return (
    <section class="card">
      <h2>{say('level-seen-title')}</h2>
      <EntryForm viewer={props.viewer} action={`/line/${props.at.line.id}/level/seen`} trouble={trouble} id="seen">
        <ChoiceEntry name="how" label={say('field-seen-with')} as="tiles" choices={ways} required trouble={trouble} />
        <div class="side-by-side">
          <NumberEntry name="lowerGrams" label={say('field-at-least')} unit="kg" required trouble={trouble} />
          <NumberEntry name="upperGrams" label={say('field-at-most')} unit="kg" required trouble={trouble} />
        </div>
        <Act says={say('line-record')} tone="plain" />
      </EntryForm>
    </section>
  );
}

interface BinProps {
  readonly viewer: Viewer;
  readonly at: LineNow;
  readonly scales: Named;
  readonly trouble: FormTrouble | null;
}

/** A bin is closed, with the packs that it came from: only what may ever go back. */
export function binPage({ viewer, at, scales, trouble }: BinProps): VNode {
  const contents = binContents.map((value) => ({ value, says: say(`bin-${value}`) }));
  return (
    <ActPage viewer={viewer} at={at} title={say('line-to-bin')} startsAtBack>
      <EntryForm viewer={viewer} action={`/line/${at.line.id}/bin`} trouble={trouble}>
        <ChoiceEntry
          name="content"
          label={say('field-in-the-bin')}
          as="tiles"
          choices={contents}
          required
          trouble={trouble}
        />
        <NumberEntry name="netGrams" label={say('field-net')} unit="kg" required trouble={trouble} />
        <ChoiceEntry name="scaleId" label={say('field-scale')} choices={choicesOf(scales)} trouble={trouble} />
        <TextEntry
          name="run"
          label={say('field-run')}
          isCode
          required
          value={at.run?.number}
          maxLength={40}
          trouble={trouble}
        />
        <div class="side-by-side">
          <NumberEntry name="fromCount" label={say('field-from-count')} required trouble={trouble} />
          <NumberEntry name="toCount" label={say('field-to-count')} required trouble={trouble} />
        </div>
        <Act says={say('line-record')} />
      </EntryForm>
    </ActPage>
  );
}
