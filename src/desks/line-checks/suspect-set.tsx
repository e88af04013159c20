import type { VNode } from 'preact';
import type { LineCheckRow } from '../../line-checks/line-checks.js';
import { mayDo } from '../../platform/actor.js';
import { say } from '../../platform/sentences/sentences.js';
import { countText } from '../../platform/web/figures-text.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act } from '../../platform/web/kit/act.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import { Figures } from '../../platform/web/kit/figures.js';
import { Table } from '../../platform/web/kit/table.js';
import { sayLocally } from '../../platform/web/local-text.js';
import type { Viewer } from '../../platform/web/request.js';
import type { Suspects } from '../../tracing/suspects-of-check.js';
import { kilogramsOf, PlaceTable, totalOf } from './place-table.js';

interface SuspectSetProps {
  readonly viewer: Viewer;
  readonly check: LineCheckRow;
  readonly suspects: Suspects;
  readonly trouble: FormTrouble | null;
}

/** What a failed check makes suspect: by place, the one act that holds it, then pallets and runs. */
export function SuspectSet({ viewer, check, suspects, trouble }: SuspectSetProps): VNode {
  const { lastGood, untilAt, sinceAt, packCount, minutes, pallets, notHeld } = suspects;
  const isOpenEnd = untilAt === null;
  const bounds = lastGood === null ? 'suspects-since-plan' : 'suspects-since-good';
  return (
    <section class="card refusal" aria-labelledby="suspects">
      <h2 id="suspects">{say('suspects-title')}</h2>
      <Figures
        of={[
          { label: say('suspects-packs'), value: countText(packCount) },
          { label: say('suspects-sugar'), value: kilogramsOf(totalOf(suspects.places).milligrams), unit: 'kg' },
          { label: say('suspects-pallets'), value: countText(pallets.length) },
          { label: say('suspects-minutes'), value: countText(minutes), unit: 'min' },
        ]}
      />
      {packCount === 0 ? <p>{say('suspects-nothing-packed')}</p> : <PlaceTable suspects={suspects} />}
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
  const { packCount, milligrams } = totalOf(suspects.placesNotHeld);
  if (packCount === 0 || !mayDo(viewer.actor.roles, 'place-holds')) return null;
  return (
    <EntryForm viewer={viewer} action={`/checks/${check.id}/hold`} trouble={holdTrouble(trouble)} id="hold-these">
      <div class="acts">
        <Act says={say('hold-these', { packs: countText(packCount), kilograms: kilogramsOf(milligrams) })} />
      </div>
    </EntryForm>
  );
}

/** Trouble of the form below belongs below. */
export function holdTrouble(trouble: FormTrouble | null): FormTrouble | null {
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
            `${say(`suspect-place-${pallet.place}`)}${pallet.whereabouts === null ? '' : ` · ${pallet.whereabouts}`}`,
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
