import type { ComponentChildren, VNode } from 'preact';
import { say } from '../platform/sentences/sentences.js';
import { Table, type Column } from '../platform/web/kit/table.js';
import { localText } from '../platform/web/local-text.js';
import type { Viewer } from '../platform/web/request.js';
import { Shell } from '../platform/web/shell.js';
import { StateMark } from '../platform/web/state-mark.js';
import type { LocatedShift } from '../core/shift-calendar/locate-shift.js';
import { clockSentence } from './clock-text.js';
import { papersOf } from './customer.page.js';
import type { ScaleStanding } from './plant-rows.js';
import type { WholePlant } from './whole-plant.js';

interface PlantProps {
  readonly viewer: Viewer;
  readonly plant: WholePlant;
}

/** The plant as it is set up now. */
export function plantPage({ viewer, plant }: PlantProps): VNode {
  const { site, shift } = plant;
  const at = (instant: string | null) => (instant === null ? say('plant-none') : localText(instant, site.timeZone));
  return (
    <Shell title={say('plant-title')} viewer={viewer}>
      <p class="sentence">{say('plant-site', { name: site.name, code: site.code, timeZone: site.timeZone })}</p>
      <p>{say('plant-numbers', { gln: site.gln, prefix: site.companyPrefix, start: site.productionDayStart })}</p>
      <p>{say('papers-language-of-site', { language: site.paperLanguage })}</p>
      <p>{shift === null ? say('plant-no-shift') : shiftSentence(shift, at)}</p>
      {plant.shiftPattern === null ? null : (
        <Table
          caption={say('plant-shifts')}
          columns={heads(['plant-code', 'plant-name', 'plant-starts'])}
          rows={plant.shiftPattern.shifts.map((one) => ({ key: one.code, cells: [one.code, one.name, one.startTime] }))}
        />
      )}
      <Table
        caption={say('plant-dryers')}
        columns={heads(['plant-code', 'plant-name'])}
        rows={plant.dryers.map((dryer) => ({ key: dryer.id, cells: [dryer.code, dryer.name] }))}
      />
      <Table
        caption={say('plant-hoppers')}
        columns={heads(['plant-code', 'plant-name', 'plant-capacity', 'plant-feeds', 'plant-flow'])}
        rows={plant.hoppers.map((hopper) => ({
          key: hopper.id,
          cells: [
            hopper.code,
            hopper.name,
            kilograms(hopper.capacityGrams * 1000),
            fedBy(plant, hopper.id),
            <a key="flow" href={`/hoppers/${hopper.id}/flow`}>
              {say('plant-flow-see')}
            </a>,
          ],
        }))}
      />
      <p class="caution">{say('plant-caution-hopper')}</p>
      <Table
        caption={say('plant-lines')}
        columns={heads(['plant-code', 'plant-name', 'plant-fed-by', 'plant-coder', 'plant-clock'])}
        rows={plant.lines.map((line) => ({
          key: line.id,
          cells: [
            <a href={`/lines/${line.id}/fill`}>{line.code}</a>,
            line.name,
            line.hopperCode === null
              ? say('plant-fed-by-none')
              : say('plant-fed-since', { hopper: line.hopperCode, at: at(line.fedSinceAt) }),
            line.coderCode ?? say('plant-none'),
            line.coderClock === null ? (
              say('plant-none')
            ) : (
              <a href={`/lines/${line.id}/coder-clock`}>{clockSentence(line.coderClock)}</a>
            ),
          ],
        }))}
      />
      <Table
        caption={say('plant-scales')}
        columns={heads([
          'plant-code',
          'plant-name',
          'plant-interval',
          'plant-error',
          'plant-checked',
          'plant-due',
          'plant-verified',
        ])}
        rows={plant.scales.map((standing) => ({ key: standing.scale.id, cells: scaleCells(standing, at) }))}
      />
      <p class="caution">{say('plant-caution-scale')}</p>
      <Goods plant={plant} />
      <Table
        caption={say('plant-customers')}
        columns={heads(['plant-code', 'plant-name', 'plant-gln', 'plant-papers'])}
        rows={plant.customers.map((customer) => ({
          key: customer.id,
          cells: [
            <a href={`/customers/${customer.id}`}>{customer.code}</a>,
            customer.name ?? say('plant-name-removed'),
            customer.gln ?? say('plant-none'),
            papersOf(customer, site.paperLanguage),
          ],
        }))}
      />
      <Table
        caption={say('plant-places')}
        columns={heads(['plant-code', 'plant-kind'])}
        rows={plant.places.map((place) => ({ key: place.id, cells: [place.code, say(`place-${place.kind}`)] }))}
      />
    </Shell>
  );
}

function Goods({ plant }: { readonly plant: WholePlant }): VNode {
  return (
    <>
      <Table
        caption={say('plant-grades')}
        columns={heads(['plant-code', 'plant-name', 'plant-tipping', 'plant-specification'])}
        rows={plant.grades.map((grade) => ({
          key: grade.id,
          cells: [
            grade.code,
            grade.name,
            say(`tipping-${grade.tippingRule}`),
            grade.specification === null
              ? say('plant-none')
              : grade.specification.map((line) => limitsSentence(line)).join('; '),
          ],
        }))}
      />
      <Table
        caption={say('plant-formats')}
        columns={heads([
          'plant-code',
          'plant-name',
          'plant-gtin',
          'plant-takes',
          'plant-pallet',
          'plant-printed',
          'plant-best-before',
        ])}
        rows={plant.formats.map((format) => ({
          key: format.id,
          cells: [
            format.code,
            format.name,
            format.gtin,
            format.gradeCodes.join(', '),
            say('plant-packs', { count: format.packsPerPallet }),
            format.codePattern,
            format.bestBeforeMonths === null
              ? say('plant-none')
              : say('plant-months', { count: format.bestBeforeMonths }),
          ],
        }))}
      />
    </>
  );
}

/** Heads of columns by their codes; amounts stand to the right. */
function heads(codes: readonly string[]): readonly Column[] {
  return codes.map((code) => ({ head: say(code), align: amounts.has(code) ? 'number' : undefined }));
}

const amounts: ReadonlySet<string> = new Set(['plant-capacity', 'plant-interval', 'plant-error', 'plant-pallet']);

function scaleCells(standing: ScaleStanding, at: (instant: string | null) => string): readonly ComponentChildren[] {
  const { scale, isOverdue, hasFailed } = standing;
  return [
    scale.code,
    scale.name,
    kilograms(scale.intervalMilligrams),
    kilograms(scale.maximumPermissibleErrorMilligrams),
    standing.lastCheckedAt === null ? say('plant-never-checked') : at(standing.lastCheckedAt),
    <>
      {standing.dueAt === null ? null : <span>{at(standing.dueAt)} </span>}
      {isOverdue || hasFailed ? <StateMark state="doubtful" /> : null}
      {isOverdue ? <span> {say('plant-scale-overdue')}</span> : null}
      {hasFailed ? <span> {say('plant-scale-failed')}</span> : null}
    </>,
    standing.isVerifiedForTrade
      ? say('plant-verified-until', { on: standing.verifiedUntilOn })
      : say('plant-not-verified'),
  ];
}

function fedBy(plant: WholePlant, hopperId: string): string {
  const fed = plant.lines.filter((line) => line.hopperId === hopperId).map((line) => line.code);
  return fed.length === 0 ? say('plant-none') : fed.join(', ');
}

function shiftSentence(shift: LocatedShift, at: (instant: string) => string): string {
  const { productionOn, shiftCode, startsAt, endsAt, lengthMinutes, crew } = shift;
  const facts = { on: productionOn, shift: shiftCode, from: at(startsAt), until: at(endsAt), minutes: lengthMinutes };
  return say('plant-shift', facts) + (crew === null ? '' : ` ${say('plant-crew', { crew })}`);
}

function limitsSentence(line: { property: string; minimum: string | null; maximum: string | null }): string {
  const { property, minimum, maximum } = line;
  if (minimum !== null && maximum !== null) return say('plant-limits-both', { property, minimum, maximum });
  if (maximum !== null) return say('plant-limits-most', { property, maximum });
  if (minimum !== null) return say('plant-limits-least', { property, minimum });
  return say('plant-limits-none', { property });
}

function kilograms(milligrams: number): string {
  return say('plant-kilograms', { kilograms: milligrams / 1_000_000 });
}
