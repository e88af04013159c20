import type { VNode } from 'preact';
import { actionText } from '../journal/entry-text.js';
import { say } from '../platform/sentences/sentences.js';
import { countText } from '../platform/web/figures-text.js';
import { Table } from '../platform/web/kit/table.js';
import { localText } from '../platform/web/local-text.js';
import { DossierWeights } from './dossier-weights.js';
import type { Dossier, NearEvent } from './dossier.js';

interface DossierProps {
  readonly dossier: Dossier;
  readonly timeZone: string;
}

/** What the records show around the packs: stops and checks, what was corrected, and packs of the same sugar. */
export function ThreadDossier({ dossier, timeZone }: DossierProps): VNode {
  const { near, changes, sisters, weights } = dossier;
  const failed = near.filter(({ passed }) => passed === false).length;
  return (
    <section class="card" aria-labelledby="dossier">
      <h2 id="dossier">{say('dossier-title')}</h2>
      <p class="sentence">
        {say('dossier-says', {
          stops: countOf(near, 'stop'),
          checks: countOf(near, 'check'),
          failed,
          changes: changes.length,
        })}
      </p>
      <Table
        caption={say('dossier-near')}
        columns={[{ head: say('thread-when') }, { head: say('thread-what') }, { head: say('dossier-result') }]}
        rows={near.map((event) => ({
          key: `${event.kind} ${event.at} ${event.says}`,
          isLoud: event.passed === false,
          cells: [localText(event.at, timeZone), <What key="what" event={event} />, resultText(event)],
        }))}
        empty={say('dossier-nothing-near')}
      />
      <DossierWeights weights={weights} timeZone={timeZone} />
      <Table
        caption={say('dossier-changes')}
        columns={[
          { head: say('dossier-entry'), align: 'number' },
          { head: say('thread-what') },
          { head: say('dossier-happened') },
          { head: say('dossier-recorded') },
        ]}
        rows={changes.map(({ sequence, action, occurredAt, recordedAt }) => ({
          key: String(sequence),
          cells: [
            String(sequence),
            actionText(action),
            localText(occurredAt, timeZone),
            localText(recordedAt, timeZone),
          ],
        }))}
        empty={say('dossier-no-changes')}
      />
      <Table
        caption={say('dossier-sisters')}
        columns={[
          { head: say('dossier-how-sure') },
          { head: say('thread-pallet-count'), align: 'number' },
          { head: say('thread-packs'), align: 'number' },
        ]}
        rows={sisters.map(({ word, palletCount, packCount }) => ({
          key: word,
          cells: [say(`link-${word}`), countText(palletCount), countText(packCount)],
        }))}
        empty={say('dossier-no-sisters')}
      />
    </section>
  );
}

function countOf(near: readonly NearEvent[], kind: NearEvent['kind']): number {
  return near.filter((event) => event.kind === kind).length;
}

function What({ event }: { readonly event: NearEvent }): VNode {
  const { kind, says, lineCode, href } = event;
  const what =
    kind === 'stop'
      ? `${say('line-event-stop')}: ${say(`stop-reason-${says}`)}`
      : say('dossier-check', { station: says });
  return (
    <>
      <a href={href}>{what}</a> <small>{lineCode}</small>
    </>
  );
}

function resultText({ passed }: NearEvent): string {
  if (passed === null) return '';
  return say(passed ? 'dossier-passed' : 'dossier-failed');
}
