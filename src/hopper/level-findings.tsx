import type { VNode } from 'preact';
import { say } from '../platform/sentences/sentences.js';
import { Table } from '../platform/web/kit/table.js';
import { localText } from '../platform/web/local-text.js';
import type { HopperLevel, PlacedSuspect } from './hopper-level.js';
import type { PeriodView } from './hopper-views.js';
import { mass, timesText } from './level-text.js';
import type { SuspectTip } from './named-suspects.js';

interface FindingsProps {
  readonly view: Pick<PeriodView, 'level' | 'suspectTips' | 'missingTip'>;
  readonly timeZone: string;
}

type Local = (at: string | null) => string;

/**
 * What in the records cannot be true and which single mistakes would explain it; where they can be, by when a tip that
 * nobody entered must have shown.
 */
export function LevelFindings({ view, timeZone }: FindingsProps): VNode | null {
  const local: Local = (at) => (at === null ? say('level-since-the-start') : localText(at, timeZone));
  const { level } = view;
  if (level.findings.length === 0) return <MissingTip view={view} local={local} />;
  return (
    <section class="card" aria-labelledby="findings">
      <h2 id="findings">{say('hopper-records-impossible')}</h2>
      <ul>
        {level.findings.map(({ kind, eventIndex, at, byGrams }) => (
          <li key={`${kind}-${eventIndex}`}>
            {say('finding-at', { at: local(at), kilograms: mass(byGrams), what: say(`finding-${kind}`) })}
          </li>
        ))}
      </ul>
      <p class="sentence">{toldText(level)}</p>
      <SuspectTable view={view} local={local} />
      <p class="quiet">{say('suspects-fit-says')}</p>
    </section>
  );
}

/** How clearly the first mistake stands out: alone, so many times better, tied, or not at all. */
function toldText({ suspects, timesBetter }: Pick<HopperLevel, 'suspects' | 'timesBetter'>): string {
  const tied = suspects.filter(({ isTied }) => isTied).length;
  if (suspects[0]?.cures !== true) return say('suspects-none-cures');
  if (tied > 1) return say('suspects-tied', { count: tied });
  return timesBetter === null ? say('suspects-only-one') : say('suspects-lead', { times: timesText(timesBetter) });
}

function SuspectTable({ view, local }: { readonly view: FindingsProps['view']; readonly local: Local }): VNode {
  return (
    <Table
      caption={say('suspects-best-first')}
      columns={[
        { head: say('suspect-what') },
        { head: say('exit-mass'), align: 'number' },
        { head: say('suspect-fit'), align: 'number' },
        { head: say('suspect-leaves'), align: 'number' },
        { head: say('suspect-told') },
      ]}
      rows={view.level.suspects.map((suspect, place) => ({
        key: String(place),
        cells: [
          suspectText(suspect, view.suspectTips, local),
          mass(suspect.grams),
          suspect.cures ? `${Math.max(1, Math.round(suspect.fit * 100))} %` : '–',
          suspect.remainingGrams === 0 ? '–' : mass(suspect.remainingGrams),
          suspect.isTied
            ? say('suspect-is-tied')
            : say(place === 0 && suspect.cures ? 'suspect-is-best' : 'suspect-is-less'),
        ],
      }))}
    />
  );
}

function suspectText(suspect: PlacedSuspect, tips: readonly SuspectTip[], local: Local): string {
  const tip = tips.find(({ tipId }) => tipId === suspect.id);
  const name = tip?.bagNumber ?? tip?.binNumber ?? null;
  return say(`suspect-${suspect.kind}`, {
    bag:
      tip === undefined || name === null
        ? say('suspect-not-named')
        : say('suspect-tip', { bag: name, hopper: tip.hopperCode, at: local(tip.openedAt) }),
    mass: mass(suspect.grams),
    after: local(suspect.afterAt),
    by: local(suspect.byAt),
  });
}

function MissingTip({ view, local }: { readonly view: FindingsProps['view']; readonly local: Local }): VNode | null {
  if (view.missingTip === null) return null;
  const { grams, beforeAt } = view.missingTip;
  return (
    <p class="quiet">
      {say(beforeAt === null ? 'missing-tip-hidden' : 'missing-tip-shown', { mass: mass(grams), at: local(beforeAt) })}
    </p>
  );
}
