import type { VNode } from 'preact';
import type { StretchWeighed } from '../fill-weight/weights-around.js';
import { gramsText } from '../fill-weight/weight-text.js';
import { decimalText } from '../platform/sentences/decimal-text.js';
import { say } from '../platform/sentences/sentences.js';
import { countText } from '../platform/web/figures-text.js';
import { Table } from '../platform/web/kit/table.js';
import { localText } from '../platform/web/local-text.js';
import type { DossierWeights as WeightsOfRun } from './dossier.js';

interface WeightsProps {
  readonly weights: readonly WeightsOfRun[];
  readonly timeZone: string;
}

/** What weighers weighed in the minutes of the packs, around them and over the run. */
export function DossierWeights({ weights, timeZone }: WeightsProps): VNode {
  if (weights.length === 0) return <p class="quiet">{say('dossier-not-weighed')}</p>;
  return (
    <>
      {weights.map((one) => (
        <WeightsByWeigher key={`${one.runId} ${one.weigherId}`} of={one} timeZone={timeZone} />
      ))}
    </>
  );
}

function WeightsByWeigher({ of, timeZone }: { readonly of: WeightsOfRun; readonly timeZone: string }): VNode {
  const stretches = (['packs', 'around', 'run'] as const).map((name) => ({ name, ...of[name] }));
  return (
    <>
      <Table
        caption={say('dossier-weights', { run: of.runNumber, weigher: of.weigherCode })}
        columns={[
          { head: say('dossier-weights-stretch') },
          { head: say('dossier-weights-count'), align: 'number' },
          { head: say('dossier-weights-mean'), align: 'number' },
          { head: say('dossier-weights-smallest'), align: 'number' },
          { head: say('dossier-weights-short'), align: 'number' },
          { head: say('dossier-weights-rejected'), align: 'number' },
        ]}
        rows={stretches.map((stretch) => ({
          key: stretch.name,
          isLoud: stretch.name === 'packs' && stretch.beyondT1Count > 0,
          cells: [say(`dossier-weights-${stretch.name}`), ...cellsOf(stretch, of.t1Milligrams)],
        }))}
      />
      {of.packs.isWhole && of.around.isWhole ? null : <p class="quiet">{say('dossier-weights-gone')}</p>}
      <NearestWeights of={of} timeZone={timeZone} />
      <p>
        <a href={`/runs/${of.runId}/weights`}>{say('dossier-weights-link', { run: of.runNumber })}</a>
      </p>
    </>
  );
}

function cellsOf(stretch: StretchWeighed, t1Milligrams: number | null): readonly string[] {
  const { packCount, meanMilligrams, smallestMilligrams, beyondT1Count, rejectedPackCount } = stretch;
  return [
    countText(packCount),
    meanMilligrams === null ? '–' : gramsText(meanMilligrams),
    smallestMilligrams === null ? '–' : gramsText(smallestMilligrams),
    t1Milligrams === null || packCount === 0 ? '–' : shareOf(beyondT1Count, packCount),
    countText(rejectedPackCount),
  ];
}

function shareOf(packs: number, packCount: number): string {
  const percent = decimalText(((100 * packs) / packCount).toFixed(2));
  return say('dossier-weights-share', { packs: countText(packs), percent });
}

function NearestWeights({ of, timeZone }: { readonly of: WeightsOfRun; readonly timeZone: string }): VNode | null {
  if (of.nearest.length === 0) return null;
  return (
    <Table
      caption={say('dossier-nearest')}
      columns={[
        { head: say('thread-when') },
        { head: say('dossier-nearest-net'), align: 'number' },
        { head: say('dossier-nearest-head'), align: 'number' },
        { head: say('dossier-result') },
      ]}
      rows={of.nearest.map(({ at, netMilligrams, head, isRejected }) => ({
        key: `${at} ${netMilligrams}`,
        isLoud: !isRejected && of.t1Milligrams !== null && netMilligrams < of.t1Milligrams,
        cells: [
          `${localText(at, timeZone)}:${at.slice(17, 19)}`,
          gramsText(netMilligrams),
          head === null ? '' : String(head),
          isRejected ? say('dossier-nearest-out') : '',
        ],
      }))}
    />
  );
}
