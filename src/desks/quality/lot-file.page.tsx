import type { VNode } from 'preact';
import { HoldLink } from '../../disposition/hold-link.js';
import { printedSscc } from '../../platform/printing/printed-figures.js';
import { say } from '../../platform/sentences/sentences.js';
import { countText, roundKilogramsText } from '../../platform/web/figures-text.js';
import { ActLink } from '../../platform/web/kit/act.js';
import { Figures } from '../../platform/web/kit/figures.js';
import { Table } from '../../platform/web/kit/table.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import { StateMark } from '../../platform/web/state-mark.js';
import type { BagResult } from '../../laboratory/bag-results.js';
import { resultsBySource } from '../../tracing/source-results.js';
import { ThreadQuality } from '../../tracing/thread-quality.js';
import { distinctShifts } from '../../tracing/thread-text.js';
import { DecisionBox } from './decision-box.js';
import { Decided, Lacks } from './file-parts.js';
import type { FileTrouble } from './file-trouble.js';
import type { LotFile } from './lot-file.js';
import type { RunMeanNet } from '../../fill-weight/mean-nets.js';
import type { LotRun } from './lot-run.js';

interface LotFileProps {
  readonly viewer: Viewer;
  readonly file: LotFile;
  readonly trouble: FileTrouble | null;
}

/** A lot's file: what is missing before a decision, what is known, and the decision. */
export function lotFilePage({ viewer, file, trouble }: LotFileProps): VNode {
  const { lot, sequence } = file;
  return (
    <Shell title={say('lot-file-title', { lot: lot.code, format: lot.formatName })} viewer={viewer}>
      {trouble?.changed ?? null}
      <div class="file">
        <div>
          <Lacks lacks={file.lacks} timeZone={viewer.timeZone} />
          <Decided decisions={file.decisions} timeZone={viewer.timeZone} />
        </div>
        <LotFacts file={file} />
      </div>
      <Scopes viewer={viewer} file={file} />
      <DecisionBox
        viewer={viewer}
        action={`/quality/lots/${lot.id}/decision`}
        trouble={trouble?.form ?? null}
        seen={{ kind: 'lot', id: lot.id, sequence }}
        seconds={file.seconds}
      />
      <Pallets file={file} />
    </Shell>
  );
}

function LotFacts({ file }: { readonly file: LotFile }): VNode {
  const { thread, runs } = file;
  const packs = thread.packed.reduce((sum, part) => sum + part.toCount - part.fromCount, 0);
  const packing = distinctShifts(thread.packed.flatMap((part) => part.packingShifts)).join(', ');
  const dryers = distinctShifts(thread.dryerShifts).join(', ');
  return (
    <section class="card" aria-labelledby="facts">
      <h2 id="facts">{say('file-facts')}</h2>
      <p>
        <StateMark state={file.state} />
      </p>
      <Figures
        of={[
          { label: say('thread-packs'), value: countText(packs) },
          { label: say('thread-sugar-in-it'), value: roundKilogramsText(thread.subjectGrams.grams), unit: 'kg' },
          { label: say('file-pallets'), value: countText(file.pallets.length) },
          { label: say('file-away'), value: countText(file.pallets.filter(isAway).length) },
        ]}
      />
      <dl class="facts">
        <dt>{say('thread-packing-shift')}</dt>
        <dd>{packing === '' ? '–' : packing}</dd>
        <dt>{say('file-dryer-shifts')}</dt>
        <dd>{dryers === '' ? '–' : dryers}</dd>
      </dl>
      <Table
        caption={say('file-runs')}
        columns={[
          { head: say('thread-run') },
          { head: say('thread-packs'), align: 'number' },
          { head: say('file-mean'), align: 'number' },
        ]}
        rows={runs.map(runRow)}
      />
      <Bags file={file} />
      <ThreadQuality expected={thread.expected} />
      <p>
        <a href={`/thread?code=${encodeURIComponent(file.lot.code)}`}>{say('lot-follow', { code: file.lot.code })}</a>
      </p>
    </section>
  );
}

const isAway = ({ status }: { readonly status: string }): boolean => status === 'dispatched';

function restsOn({ basis, samplePackCount, weighedPackCount }: RunMeanNet): string {
  if (basis === 'measured') return say('mean-measured', { count: Math.max(samplePackCount, weighedPackCount) });
  return say(weighedPackCount === 0 ? 'mean-assumed' : 'mean-mostly-assumed');
}

function runRow({ run, range, mean }: LotRun) {
  const end = range.toCount ?? run.packCount;
  const weighed = mean === null ? '–' : `${(mean.meanMilligrams / 1000).toFixed(1)} g ${restsOn(mean)}`;
  return {
    key: range.changeId,
    cells: [
      <a key="run" href={`/runs/${run.id}`}>
        {run.number}
      </a>,
      countText(end - range.fromCount),
      weighed,
    ],
  };
}

/** The bags that are surely or likely in it; the possible ones are counted. */
function Bags({ file }: { readonly file: LotFile }): VNode {
  const { sources } = file.thread;
  const results = resultsBySource(file.thread);
  const likely = sources.filter(({ word }) => word !== 'possible');
  return (
    <>
      <Table
        caption={say('file-bags', { count: likely.length, possible: sources.length - likely.length })}
        columns={[
          { head: say('thread-bag'), align: 'code' },
          { head: say('thread-likely'), align: 'number' },
          { head: say('thread-results') },
          { head: say('thread-state') },
        ]}
        rows={likely.map((source) => ({
          key: source.bagId,
          cells: [
            <a key="bag" href={`/quality/bags/${source.bagId}`}>
              {source.bagNumber}
            </a>,
            roundKilogramsText(source.likelyGrams),
            resultsText(results.get(source.bagId) ?? []),
            <StateMark key="state" state={source.isOnHold ? 'on-hold' : (source.decision as 'waiting')} />,
          ],
        }))}
      />
    </>
  );
}

function resultsText(results: readonly BagResult[]): string {
  return results.map(({ property, amount }) => `${say(`property-${property}`)} ${amount}`).join('; ') || '–';
}

/** What a decision or a hold may be about. */
function Scopes({ viewer, file }: { readonly viewer: Viewer; readonly file: LotFile }): VNode {
  const { lot, runs } = file;
  return (
    <nav class="scopes" aria-label={say('scope-head')}>
      <h2>{say('scope-head')}</h2>
      <div class="acts">
        <ActLink href="#decision" says={say('scope-chip-lot')} />
        {runs.map(({ run, range }) => (
          <ActLink
            key={range.changeId}
            href={`/quality/holds/new?kind=packing-run&id=${run.id}&fromCount=${range.fromCount}&toCount=${range.toCount ?? run.packCount}`}
            says={say('scope-chip-hours', { run: run.number })}
          />
        ))}
        <ActLink href="#pallets" says={say('scope-chip-pallets')} />
        <ActLink href={`/quality/bags?lot=${lot.id}`} says={say('scope-chip-bags')} />
        <HoldLink viewer={viewer} kind="lot" id={lot.id} />
      </div>
    </nav>
  );
}

function Pallets({ file }: { readonly file: LotFile }): VNode {
  return (
    <section id="pallets">
      <Table
        caption={say('file-its-pallets')}
        columns={[
          { head: say('thread-pallet'), align: 'code' },
          { head: say('thread-packs'), align: 'number' },
          { head: say('thread-where') },
          { head: say('thread-customer') },
        ]}
        rows={file.pallets.map((pallet) => ({
          key: pallet.palletId,
          cells: [
            <a key="pallet" href={`/quality/pallets/${pallet.palletId}`}>
              {printedSscc(pallet.sscc)}
            </a>,
            countText(pallet.packCount),
            [say(`pallet-is-${pallet.status}`), pallet.placeCode].filter((part) => part !== null).join(' · '),
            pallet.customerName ?? '',
          ],
        }))}
      />
    </section>
  );
}
