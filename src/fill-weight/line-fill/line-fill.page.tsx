import type { VNode } from 'preact';
import type { NamedRow } from '../../plant/plant-rows.js';
import { say } from '../../platform/sentences/sentences.js';
import { countText, kilogramsText } from '../../platform/web/figures-text.js';
import { ActLink } from '../../platform/web/kit/act.js';
import { Figures } from '../../platform/web/kit/figures.js';
import { Table } from '../../platform/web/kit/table.js';
import { localText } from '../../platform/web/local-text.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import { gramsText } from '../weight-text.js';
import type { AdviceOnFormat } from './advise-fill.js';
import { FillAdvice } from './fill-advice.js';
import { FillForm } from './fill-form.js';
import { SettingOfFormat } from './setting-of-format.js';
import type { LineFill } from './line-fill.js';
import type { LineFillQuery } from './line-fill.query.js';

interface LineFillProps {
  readonly viewer: Viewer;
  readonly line: NamedRow;
  readonly query: LineFillQuery;
  readonly period: LineFill['period'];
  readonly formats: readonly AdviceOnFormat[];
}

/** How a line filled lately, what that gives away, and what to set it to. People decide. */
export function lineFillPage({ viewer, line, query, period, formats }: LineFillProps): VNode {
  return (
    <Shell title={say('line-fill-title', { line: line.name })} viewer={viewer}>
      <p class="sentence">
        {period === null
          ? say('line-fill-no-runs')
          : say('line-fill-period', {
              from: localText(period.fromAt, viewer.timeZone),
              days: period.days.toFixed(1),
            })}
      </p>
      <p class="caution">
        {say('fill-law-caution')} {say('line-fill-caution')}
      </p>
      {formats.map((format) => (
        <Format key={format.fill.formatId} viewer={viewer} lineId={line.id} of={format} />
      ))}
      {formats.length === 0 ? null : (
        <>
          <h2>{say('line-fill-reckon-with')}</h2>
          <FillForm lineId={line.id} query={query} />
        </>
      )}
      <div class="acts">
        <ActLink href={`/lines/${line.id}/settings`} says={say('setting-title', { line: line.name })} />
        <ActLink href="/plant" says={say('line-fill-back')} />
      </div>
    </Shell>
  );
}

interface FormatProps {
  readonly viewer: Viewer;
  readonly lineId: string;
  readonly of: AdviceOnFormat;
}

function Format({ viewer, lineId, of }: FormatProps): VNode {
  const { fill } = of;
  return (
    <>
      <h2>{fill.formatName}</h2>
      <SettingOfFormat viewer={viewer} lineId={lineId} of={of} />
      <FillAdvice of={of} />
      <Present of={of} />
      <Table
        caption={say('line-fill-lots', { format: fill.formatName })}
        columns={[
          { head: say('line-fill-run') },
          { head: say('line-fill-started') },
          { head: say('line-fill-weighed'), align: 'number' },
          { head: say('line-fill-counted'), align: 'number' },
          { head: say('line-fill-setpoint'), align: 'number' },
          { head: say('line-fill-mean'), align: 'number' },
          { head: say('line-fill-spread'), align: 'number' },
          { head: say('line-fill-giveaway'), align: 'number' },
          { head: say('line-fill-used') },
        ]}
        rows={fill.lots.map((lot) => ({
          key: lot.runId,
          cells: [
            <a href={`/runs/${lot.runId}/weights`}>{lot.number}</a>,
            localText(lot.startedAt, viewer.timeZone),
            countText(lot.weighedPackCount),
            countText(lot.countedPackCount),
            gramsOrNone(lot.setpointMilligrams),
            gramsOrNone(lot.meanMilligrams),
            gramsOrNone(lot.standardDeviationMilligrams),
            lot.weighedPackCount === 0 ? '–' : kilogramsText(Math.round(lot.giveawayMilligrams / 1000)),
            say(lot.leftOut === null ? 'line-fill-is-used' : `line-fill-left-out-${lot.leftOut}`),
          ],
        }))}
        empty={say('line-fill-no-closed')}
      />
    </>
  );
}

function gramsOrNone(milligrams: number | null): string {
  return milligrams === null ? '–' : gramsText(milligrams, 2);
}

/** How the line fills now, as far as the lots say. */
function Present({ of: { present, variation } }: { readonly of: AdviceOnFormat }): VNode | null {
  if (present === null) return null;
  const grams = (code: string, milligrams: number) => ({
    label: say(code),
    value: gramsText(milligrams, 2),
    unit: 'g',
  });
  const { packsPerDay, packsPerMonth, givenAwayKilogramsPerMonth } = present;
  return (
    <>
      <Figures
        of={[
          grams('line-fill-present-mean', present.meanMilligrams),
          ...(variation === null
            ? []
            : [
                grams('line-fill-sigma', variation.sigmaMilligrams),
                grams('line-fill-drift', variation.driftSigmaMilligrams),
              ]),
          {
            label: say('line-fill-given-away'),
            value: countText(Math.round(givenAwayKilogramsPerMonth)),
            unit: say('line-fill-kilograms-a-month'),
          },
        ]}
      />
      <p class="quiet">
        {say('line-fill-month', {
          packs: countText(Math.round(packsPerDay)),
          month: countText(Math.round(packsPerMonth)),
        })}
      </p>
    </>
  );
}
