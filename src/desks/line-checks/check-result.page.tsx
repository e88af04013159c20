import type { VNode } from 'preact';
import { correctionReasons } from '../../journal/void-fact.js';
import type { LineCheckRow } from '../../line-checks/line-checks.js';
import { mayDo } from '../../platform/actor.js';
import { say } from '../../platform/sentences/sentences.js';
import { countText } from '../../platform/web/figures-text.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act, ActLink } from '../../platform/web/kit/act.js';
import { HiddenEntry, TextEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import { Figures } from '../../platform/web/kit/figures.js';
import { Table } from '../../platform/web/kit/table.js';
import { localText, sayLocally } from '../../platform/web/local-text.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import type { Suspects } from '../../tracing/suspects-of-check.js';
import { resultText } from './check-table.js';
import { thousandthsText } from './check-text.js';

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

interface SuspectSetProps {
  readonly viewer: Viewer;
  readonly check: LineCheckRow;
  readonly suspects: Suspects;
  readonly trouble: FormTrouble | null;
}

function SuspectSet({ viewer, check, suspects, trouble }: SuspectSetProps): VNode {
  const { lastGood, untilAt, sinceAt, packCount, minutes, pallets, loosePackCount, notHeld } = suspects;
  const isOpenEnd = untilAt === null;
  const bounds = lastGood === null ? 'suspects-since-plan' : 'suspects-since-good';
  return (
    <section class="card refusal" aria-labelledby="suspects">
      <h2 id="suspects">{say('suspects-title')}</h2>
      <Figures
        of={[
          { label: say('suspects-packs'), value: countText(packCount) },
          { label: say('suspects-pallets'), value: countText(pallets.length) },
          { label: say('suspects-loose'), value: countText(loosePackCount) },
          { label: say('suspects-minutes'), value: countText(minutes), unit: 'min' },
        ]}
      />
      {packCount === 0 ? <p>{say('suspects-nothing-packed')}</p> : null}
      <HoldThese viewer={viewer} check={check} suspects={suspects} trouble={trouble} />
      <p>
        {sayLocally(bounds, { since: sinceAt }, viewer.timeZone)}{' '}
        {sayLocally(isOpenEnd ? 'suspects-until-now' : 'suspects-until-good', { until: untilAt }, viewer.timeZone)}
      </p>
      {suspects.holds.length === 0 ? null : (
        <p>
          {say('suspects-held-by')}{' '}
          {suspects.holds.map((hold) => (
            <a key={hold.id} class="code" href={`/holds/${hold.id}`}>
              {hold.number}{' '}
            </a>
          ))}
          {notHeld.length === 0 ? say('suspects-all-held') : null}
        </p>
      )}
      <SuspectTables suspects={suspects} />
    </section>
  );
}

/** One touch holds what nobody holds yet. */
function HoldThese({ viewer, check, suspects, trouble }: SuspectSetProps): VNode | null {
  const packs = suspects.notHeld.reduce((sum, range) => sum + range.toCount - range.fromCount, 0);
  if (packs === 0 || !mayDo(viewer.actor.roles, 'place-holds')) return null;
  return (
    <EntryForm viewer={viewer} action={`/checks/${check.id}/hold`} trouble={holdTrouble(trouble)} id="hold-these">
      <div class="acts">
        <Act says={say('hold-these', { packs: countText(packs) })} />
      </div>
    </EntryForm>
  );
}

/** Trouble of the form below belongs below. */
function holdTrouble(trouble: FormTrouble | null): FormTrouble | null {
  return trouble?.entered['why'] === undefined ? trouble : null;
}

function SuspectTables({ suspects }: { readonly suspects: Suspects }): VNode {
  return (
    <>
      <Table
        caption={say('suspects-pallets')}
        columns={[
          { head: say('suspect-pallet'), align: 'code' },
          { head: say('suspect-where') },
          { head: say('suspect-packs'), align: 'number' },
          { head: say('suspect-of'), align: 'number' },
          { head: say('suspect-sure') },
        ]}
        rows={suspects.pallets.map((pallet) => ({
          key: pallet.palletId,
          isLoud: pallet.status === 'dispatched',
          cells: [
            <a href={`/pallets/${pallet.palletId}`}>{pallet.sscc}</a>,
            `${say(`pallet-is-${pallet.status}`)}${pallet.whereabouts === null ? '' : ` · ${pallet.whereabouts}`}`,
            countText(pallet.suspectPackCount),
            countText(pallet.packCount),
            say(pallet.isCertain ? 'suspect-surely' : 'suspect-perhaps'),
          ],
        }))}
        empty={say('suspects-no-pallet')}
      />
      <Table
        caption={say('suspects-runs')}
        columns={[
          { head: say('suspect-run'), align: 'code' },
          { head: say('suspect-format') },
          { head: say('suspect-from'), align: 'number' },
          { head: say('suspect-to'), align: 'number' },
          { head: say('suspect-lots') },
        ]}
        rows={suspects.ranges.map((range) => ({
          key: `${range.runId} ${range.fromCount}`,
          cells: [
            <a href={`/runs/${range.runId}`}>{range.runNumber}</a>,
            range.formatName,
            countText(range.fromCount),
            countText(range.toCount),
            range.lots.map(({ code, packCount }) => `${code} (${countText(packCount)})`).join(', '),
          ],
        }))}
        empty={say('suspects-nothing')}
      />
    </>
  );
}

function TornBag({ viewer, check, trouble }: Omit<SuspectSetProps, 'suspects'>): VNode {
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
            {measuredMilligrams === null ? null : ` · ${thousandthsText(measuredMilligrams)} g`}
          </li>
        ))}
      </ul>
      {check.readCode === null ? null : (
        <p>{say('check-code-read', { read: check.readCode, intended: check.intendedCode })}</p>
      )}
      {check.action === null ? null : <p>{say(`check-action-${check.action}`)}</p>}
      {check.note === null ? null : <p>{check.note}</p>}
    </section>
  );
}

function pieceName(check: LineCheckRow, code: string): string {
  return check.pieces.find((piece) => piece.code === code)?.says ?? code;
}

/** A correction adds; a failed check is quality's to take back. */
function Correct({ viewer, check, trouble }: Omit<SuspectSetProps, 'suspects'>): VNode | null {
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
