import type { VNode } from 'preact';
import { say } from '../platform/sentences/sentences.js';
import { localText } from '../platform/web/local-text.js';
import type { Viewer } from '../platform/web/request.js';
import { Shell } from '../platform/web/shell.js';
import { StateMark } from '../platform/web/state-mark.js';
import type { LocatedShift } from '../core/shift-calendar/locate-shift.js';
import type { CoderClockReading, ScaleStanding } from './plant-rows.js';
import { Row, Table } from './plant-table.js';
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
      <p>{shift === null ? say('plant-no-shift') : shiftSentence(shift, at)}</p>
      {plant.shiftPattern === null ? null : (
        <Table title={say('plant-shifts')} heads={['plant-code', 'plant-name', 'plant-starts']}>
          {plant.shiftPattern.shifts.map((one) => (
            <Row key={one.code} cells={[one.code, one.name, one.startTime]} />
          ))}
        </Table>
      )}
      <Table title={say('plant-dryers')} heads={['plant-code', 'plant-name']}>
        {plant.dryers.map((dryer) => (
          <Row key={dryer.id} cells={[dryer.code, dryer.name]} />
        ))}
      </Table>
      <Table
        title={say('plant-hoppers')}
        heads={['plant-code', 'plant-name', 'plant-capacity', 'plant-feeds', 'plant-flow']}
      >
        {plant.hoppers.map((hopper) => (
          <Row
            key={hopper.id}
            cells={[
              hopper.code,
              hopper.name,
              kilograms(hopper.capacityGrams * 1000),
              fedBy(plant, hopper.id),
              say(`plant-flow-${hopper.flowModel}`),
            ]}
          />
        ))}
      </Table>
      <p class="caution">{say('plant-caution-hopper')}</p>
      <Table
        title={say('plant-lines')}
        heads={['plant-code', 'plant-name', 'plant-fed-by', 'plant-coder', 'plant-clock']}
      >
        {plant.lines.map((line) => (
          <Row
            key={line.id}
            cells={[
              line.code,
              line.name,
              line.hopperCode === null
                ? say('plant-fed-by-none')
                : say('plant-fed-since', { hopper: line.hopperCode, at: at(line.fedSinceAt) }),
              line.coderCode ?? say('plant-none'),
              line.coderClock === null ? say('plant-none') : clockSentence(line.coderClock),
            ]}
          />
        ))}
      </Table>
      <Table
        title={say('plant-scales')}
        heads={[
          'plant-code',
          'plant-name',
          'plant-interval',
          'plant-error',
          'plant-checked',
          'plant-due',
          'plant-verified',
        ]}
      >
        {plant.scales.map((standing) => (
          <ScaleRowOf key={standing.scale.id} standing={standing} at={at} />
        ))}
      </Table>
      <p class="caution">{say('plant-caution-scale')}</p>
      <Goods plant={plant} />
      <Table title={say('plant-customers')} heads={['plant-code', 'plant-name', 'plant-gln']}>
        {plant.customers.map((customer) => (
          <Row
            key={customer.id}
            cells={[customer.code, customer.name ?? say('plant-name-removed'), customer.gln ?? say('plant-none')]}
          />
        ))}
      </Table>
      <Table title={say('plant-places')} heads={['plant-code', 'plant-kind']}>
        {plant.places.map((place) => (
          <Row key={place.id} cells={[place.code, say(`place-${place.kind}`)]} />
        ))}
      </Table>
    </Shell>
  );
}

function Goods({ plant }: { readonly plant: WholePlant }): VNode {
  return (
    <>
      <Table title={say('plant-grades')} heads={['plant-code', 'plant-name', 'plant-tipping', 'plant-specification']}>
        {plant.grades.map((grade) => (
          <Row
            key={grade.id}
            cells={[
              grade.code,
              grade.name,
              say(`tipping-${grade.tippingRule}`),
              grade.specification === null
                ? say('plant-none')
                : grade.specification.map((line) => limitsSentence(line)).join('; '),
            ]}
          />
        ))}
      </Table>
      <Table
        title={say('plant-formats')}
        heads={[
          'plant-code',
          'plant-name',
          'plant-gtin',
          'plant-takes',
          'plant-pallet',
          'plant-printed',
          'plant-best-before',
        ]}
      >
        {plant.formats.map((format) => (
          <Row
            key={format.id}
            cells={[
              format.code,
              format.name,
              format.gtin,
              format.gradeCodes.join(', '),
              say('plant-packs', { count: format.packsPerPallet }),
              format.codePattern,
              format.bestBeforeMonths === null
                ? say('plant-none')
                : say('plant-months', { count: format.bestBeforeMonths }),
            ]}
          />
        ))}
      </Table>
    </>
  );
}

function ScaleRowOf({ standing, at }: { standing: ScaleStanding; at: (instant: string | null) => string }): VNode {
  const { scale, isOverdue, hasFailed } = standing;
  return (
    <Row
      cells={[
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
      ]}
    />
  );
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

function clockSentence({ offsetSeconds, uncertaintySeconds }: CoderClockReading): string {
  const facts = { seconds: Math.abs(offsetSeconds), uncertainty: uncertaintySeconds };
  if (offsetSeconds === 0) return say('plant-clock-right', facts);
  return say(offsetSeconds > 0 ? 'plant-clock-ahead' : 'plant-clock-behind', facts);
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
