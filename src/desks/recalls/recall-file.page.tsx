import type { VNode } from 'preact';
import { mayDo } from '../../platform/actor.js';
import { say } from '../../platform/sentences/sentences.js';
import { roundKilograms } from '../../platform/printing/printed-figures.js';
import { countText } from '../../platform/web/figures-text.js';
import { ActLink } from '../../platform/web/kit/act.js';
import { Shell } from '../../platform/web/shell.js';
import { AnswerBox, Answers } from './recall-answers.js';
import { RecallBalanceParts } from './recall-balance.js';
import { ClockBox } from './recall-clock.js';
import { RecallCustomers } from './recall-customers.js';
import type { RecallFileProps } from './recall-file-props.js';
import { HoldsBox } from './recall-holds-box.js';
import { Corrections, Events, Records, SourceBags } from './recall-records-table.js';
import { SignBox } from './recall-sign-box.js';
import { RecallUnits } from './recall-units.js';
import { scopeText } from './scope-key.js';

/** A recall or an exercise: the answer, its clock, the balance, whom to tell and what they say, its file, its signature. */
export function recallFilePage(props: RecallFileProps): VNode {
  const { viewer, file, trouble } = props;
  const { recall, figures, customerNames } = file;
  const mayRun = mayDo(viewer.actor.roles, 'run-recalls') && recall.signedAt === null;
  return (
    <Shell title={say(`recall-named-${recall.kind}`, { recall: recall.number })} viewer={viewer}>
      {trouble?.changed ?? null}
      <Answer {...props} />
      <ClockBox {...props} mayRun={mayRun} />
      <RecallBalanceParts figures={figures} />
      <RecallCustomers figures={figures} names={customerNames} recallId={recall.id} />
      <Answers {...props} mayRun={mayRun} />
      {mayRun && figures.customers.length > 0 ? <AnswerBox {...props} /> : null}
      <HoldsBox {...props} mayRun={mayRun} />
      <SignBox {...props} mayRun={mayRun} />
      <RecallUnits units={figures.units} />
      <SourceBags links={figures.links} />
      <Events events={file.events} timeZone={viewer.timeZone} />
      <Corrections entries={file.corrections} timeZone={viewer.timeZone} />
      <Records records={file.records} />
    </Shell>
  );
}

/** What it is of and where that is, in one paragraph; and the files that go with it. */
function Answer({ viewer, file }: RecallFileProps): VNode {
  const { recall, figures, scopes, origin, reportId } = file;
  const { packs, milligrams, customers } = figures;
  return (
    <section class="card" aria-labelledby="answer">
      <h2 id="answer">{say('thread-answer')}</h2>
      {recall.kind === 'exercise' ? <p class="notice">{say('recall-report-is-exercise')}</p> : null}
      <p class="sentence">
        {say('recall-says', {
          scope: scopes.map((scope) => scopeText(scope, viewer.timeZone)).join('; '),
          packs: countText(packs.produced),
          kilograms: roundKilograms(Math.round(milligrams.produced / 1000)),
          dispatched: countText(packs.dispatched),
          customers: customers.length,
          held: countText(packs.held),
          unaccounted: countText(packs.unaccounted),
        })}
      </p>
      <p>{say(`recall-report-${recall.hazard}`, { reason: recall.reason })}</p>
      <p class="quiet">
        {recall.sureness === 'possible'
          ? say('recall-report-possible')
          : say('recall-report-likely', { reason: recall.surenessReason ?? '' })}
      </p>
      {origin === null ? null : (
        <p>
          {say('recall-begins-with')} <a href={origin.href}>{origin.number}</a>
        </p>
      )}
      <div class="acts">
        {reportId === null ? null : (
          <ActLink href={`/papers/${reportId}/file`} says={say('recall-report-file')} tone="asked" accessKey="p" />
        )}
        <ActLink href={`/api/recalls/${recall.id}/links.csv`} says={say('recall-links-file')} />
      </div>
    </section>
  );
}
