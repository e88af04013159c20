import type { VNode } from 'preact';
import type { CheckPlanRow } from '../../line-checks/check-plan-rows.js';
import { checkKinds } from '../../line-checks/check-words.js';
import type { NamedRow } from '../../plant/plant-rows.js';
import { say } from '../../platform/sentences/sentences.js';
import { Act } from '../../platform/web/kit/act.js';
import { ChoiceEntry } from '../../platform/web/kit/entries.js';
import { Table } from '../../platform/web/kit/table.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import { oftenText, pieceText } from './check-text.js';

interface CheckPlansProps {
  readonly viewer: Viewer;
  readonly plans: readonly CheckPlanRow[];
  readonly lines: readonly NamedRow[];
}

/** What is checked at the lines, and the way to a new plan. */
export function checkPlansPage({ viewer, plans, lines }: CheckPlansProps): VNode {
  return (
    <Shell title={say('plans-title')} viewer={viewer}>
      <p class="quiet">{say('plans-says')}</p>
      <Table
        caption={say('plans-in-force')}
        columns={[
          { head: say('plan-station') },
          { head: say('check-line-word') },
          { head: say('check-what') },
          { head: say('plan-often') },
          { head: say('plan-pieces') },
        ]}
        rows={plans.map((plan) => ({
          key: plan.planId,
          cells: [
            <a href={`/set-up/checks/${plan.planId}`}>{plan.station}</a>,
            plan.formatName === null ? plan.lineName : `${plan.lineName} · ${plan.formatName}`,
            say(`check-kind-${plan.kind}`),
            oftenText(plan),
            plan.testPieces.map((piece) => [piece.says, pieceText(piece)].filter(Boolean).join(' ')).join('; '),
          ],
        }))}
        empty={say('plans-none')}
      />
      <section class="card" aria-labelledby="new-plan">
        <h2 id="new-plan">{say('plan-new')}</h2>
        <form method="get" action="/set-up/checks/new">
          <ChoiceEntry
            name="line"
            label={say('check-line-word')}
            required
            choices={lines.map(({ id, name }) => ({ value: id, says: name }))}
          />
          <ChoiceEntry
            name="kind"
            label={say('check-what')}
            required
            choices={checkKinds.map((kind) => ({ value: kind, says: say(`check-kind-${kind}`) }))}
          />
          <div class="acts">
            <Act says={say('plan-go-on')} />
          </div>
        </form>
      </section>
    </Shell>
  );
}
