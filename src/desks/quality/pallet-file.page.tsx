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
import { DecisionBox } from './decision-box.js';
import { Decided, Lacks } from './file-parts.js';
import type { FileTrouble } from './file-trouble.js';
import type { PalletFile } from './pallet-file.js';

interface PalletFileProps {
  readonly viewer: Viewer;
  readonly file: PalletFile;
  readonly trouble: FileTrouble | null;
}

/** One pallet: why it stands as it does, what is on it, and the decision. */
export function palletFilePage({ viewer, file, trouble }: PalletFileProps): VNode {
  const { pallet, sequence } = file;
  return (
    <Shell title={say('pallet-file-title', { sscc: printedSscc(pallet.sscc) })} viewer={viewer}>
      {trouble?.changed ?? null}
      <div class="file">
        <div>
          <Lacks lacks={file.lacks} timeZone={viewer.timeZone} />
          <Decided decisions={file.decisions} timeZone={viewer.timeZone} />
        </div>
        <PalletFacts viewer={viewer} file={file} />
      </div>
      <DecisionBox
        viewer={viewer}
        action={`/quality/pallets/${pallet.id}/decision`}
        trouble={trouble?.form ?? null}
        seen={{ kind: 'pallet', id: pallet.id, sequence }}
        seconds={file.seconds}
      />
    </Shell>
  );
}

function PalletFacts({ viewer, file: { pallet } }: Pick<PalletFileProps, 'viewer' | 'file'>): VNode {
  return (
    <section class="card" aria-labelledby="facts">
      <h2 id="facts">{say('file-facts')}</h2>
      <p>
        <StateMark state={pallet.standing.state} />
      </p>
      <Figures
        of={[
          { label: say('thread-packs'), value: countText(pallet.packCount) },
          { label: say('bag-net'), value: roundKilogramsText(pallet.netGrams), unit: 'kg' },
          {
            label: say('thread-where'),
            value: [say(`pallet-is-${pallet.status}`), pallet.placeCode].filter((part) => part !== null).join(' · '),
          },
        ]}
      />
      <Table
        caption={say('pallet-contents')}
        columns={[
          { head: say('pallet-lot'), align: 'code' },
          { head: say('pallet-run') },
          { head: say('thread-packs'), align: 'number' },
        ]}
        rows={pallet.contents.map((row) => ({
          key: `${row.runId} ${row.fromCount}`,
          cells: [
            <a key="lot" href={`/quality/lots/${row.lotId}`}>
              {row.lotCode}
            </a>,
            <a key="run" href={`/runs/${row.runId}`}>
              {row.runNumber}
            </a>,
            countText(row.toCount - row.fromCount),
          ],
        }))}
      />
      <div class="acts">
        <ActLink href={`/thread?code=${pallet.sscc}`} says={say('bag-thread')} />
        <HoldLink viewer={viewer} kind="pallet" id={pallet.id} />
      </div>
    </section>
  );
}
