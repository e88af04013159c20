import type { VNode } from 'preact';
import { correctionReasons } from '../../journal/void-fact.js';
import type { LineCheckRow } from '../../line-checks/line-checks.js';
import { mayDo } from '../../platform/actor.js';
import { say } from '../../platform/sentences/sentences.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act, ActLink } from '../../platform/web/kit/act.js';
import { HiddenEntry, TextEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import { localText, sayLocally } from '../../platform/web/local-text.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import type { Suspects } from '../../tracing/suspects-of-check.js';
import { resultText } from './check-table.js';
import { thousandthsText } from './check-text.js';
import { offText } from './readings-form.js';
import { holdTrouble, SuspectSet } from './suspect-set.js';

interface CheckResultProps {
  readonly viewer: Viewer;
  readonly check: LineCheckRow;
  /** Who made it. */
  readonly by: string;
  /** What a failed check makes suspect; null of a good one, a void one, and one of a bag. */
  readonly suspects: Suspects | null;
  readonly trouble: FormTrouble | null;
}

/** A check as it was made; of a failed one what it makes suspect, and the one act that holds it. */
export function checkResultPage({ viewer, check, by, suspects, trouble }: CheckResultProps): VNode {
  const facts = { station: check.station, line: check.lineName, at: check.occurredAt };
  const code = check.passed ? 'check-result-passed' : 'check-result-failed';
  return (
    <Shell title={say('check-result-title', { station: check.station })} viewer={viewer} use="tablet">
      <p class="sentence">{sayLocally(check.isVoid ? 'check-result-void' : code, facts, viewer.timeZone)}</p>
      {suspects === null ? null : <SuspectSet viewer={viewer} check={check} suspects={suspects} trouble={trouble} />}
      {check.bagId !== null && !check.passed && !check.isVoid ? (
        <TornBag viewer={viewer} check={check} trouble={trouble} />
      ) : null}
      <Found check={check} by={by} viewer={viewer} />
      <Correct viewer={viewer} check={check} trouble={trouble} />
      <div class="acts">
        <ActLink href={`/line/${check.lineId}/checks`} says={say('checks-title', { line: check.lineName })} />
        <ActLink href={`/checks?planId=${check.planId}`} says={say('checks-to-log')} />
      </div>
    </Shell>
  );
}

function TornBag({ viewer, check, trouble }: Omit<CheckResultProps, 'suspects' | 'by'>): VNode {
  return (
    <section class="card refusal">
      <p>
        {say('torn-bag-says')} <a href={`/bags/${check.bagId ?? ''}`}>{check.bagNumber}</a>
      </p>
      {mayDo(viewer.actor.roles, 'place-holds') ? (
        <EntryForm viewer={viewer} action={`/checks/${check.id}/hold`} trouble={holdTrouble(trouble)} id="hold-these">
          <div class="acts">
            <Act says={say('hold-this-bag', { bag: check.bagNumber })} />
          </div>
        </EntryForm>
      ) : null}
    </section>
  );
}

function Found({ check, by, viewer }: Pick<CheckResultProps, 'check' | 'by' | 'viewer'>): VNode {
  return (
    <section class="card" aria-labelledby="found">
      <h2 id="found">{say('check-found')}</h2>
      <p>
        {localText(check.occurredAt, viewer.timeZone)} · {by}
        {check.runNumber === null ? null : ` · ${check.runNumber}`}
      </p>
      <ul>
        {check.results.map(({ code, passed, measuredMilligrams }) => (
          <li key={code}>
            {code === 'all' ? check.station : pieceName(check, code)}: {resultText({ passed })}
            {measuredMilligrams === null
              ? null
              : ` · ${thousandthsText(measuredMilligrams)} g ${offOf(check, code, measuredMilligrams)}`}
          </li>
        ))}
      </ul>
      {check.readCode === null ? null : (
        <p>{say('check-code-read', { read: check.readCode, intended: check.intendedCode })}</p>
      )}
      {check.passed || check.action !== null || check.personId !== null ? null : <p>{say('check-nothing-said')}</p>}
      {check.action === null ? null : <p>{say(`check-action-${check.action}`)}</p>}
      {check.note === null ? null : <p>{check.note}</p>}
    </section>
  );
}

/** How far a reading was off what the test pack weighs, in brackets; nothing of a piece without a known weight. */
function offOf({ pieces }: LineCheckRow, code: string, measuredMilligrams: number): string {
  const piece = pieces.find((one) => one.code === code);
  if (piece?.knownMilligrams == null) return '';
  return `(${offText(measuredMilligrams - piece.knownMilligrams, piece)})`;
}

function pieceName(check: LineCheckRow, code: string): string {
  return check.pieces.find((piece) => piece.code === code)?.says ?? code;
}

/** A correction adds; a failed check is quality's to take back. */
function Correct({ viewer, check, trouble }: Omit<CheckResultProps, 'suspects' | 'by'>): VNode | null {
  const { roles } = viewer.actor;
  const isTheirs = check.passed || roles.includes('quality-officer');
  if (check.isVoid || !isTheirs || !mayDo(roles, 'correct')) return null;
  const own = trouble?.entered['why'] === undefined ? null : trouble;
  return (
    <details class="card" open={own !== null}>
      <summary>{say('check-take-back')}</summary>
      <EntryForm viewer={viewer} action={`/checks/${check.id}/correction`} trouble={own} id="correct-check">
        <HiddenEntry name="why" value={correctionReasons[0]} />
        <p>{say('check-take-back-says')}</p>
        <TextEntry name="reason" label={say('check-take-back-why')} required trouble={own} maxLength={300} />
        <div class="acts">
          <Act says={say('check-take-back')} tone="careful" />
        </div>
      </EntryForm>
    </details>
  );
}
