import type { VNode } from 'preact';
import type { SimilarComplaint } from '../../complaints/similar-complaints.js';
import { say } from '../../platform/sentences/sentences.js';
import { Table } from '../../platform/web/kit/table.js';
import { localText } from '../../platform/web/local-text.js';

interface SimilarProps {
  readonly similar: readonly SimilarComplaint[];
  readonly timeZone: string;
}

/** Other complaints with the same bags, whatever their lots; then of the same lot; then of the same kind. */
export function SimilarComplaints({ similar, timeZone }: SimilarProps): VNode {
  return (
    <Table
      caption={say('similar-caption')}
      columns={[
        { head: say('complaint-column-number'), align: 'code' },
        { head: say('complaint-column-about') },
        { head: say('complaint-column-code'), align: 'code' },
        { head: say('similar-shared') },
        { head: say('complaint-column-state') },
        { head: say('complaint-column-received') },
      ]}
      rows={similar.map((one) => ({
        key: one.complaint.id,
        isLoud: one.sharedBags.some(({ word }) => word === 'sure'),
        cells: [
          <a key="number" href={`/quality/complaints/${one.complaint.id}`}>
            {one.complaint.number}
          </a>,
          say(`complaint-about-${one.complaint.category}`),
          one.complaint.codeAsRead ?? '–',
          <Shared key="shared" of={one} />,
          say(`complaint-is-${one.complaint.status}`),
          localText(one.complaint.receivedAt, timeZone),
        ],
      }))}
      empty={say('similar-none')}
    />
  );
}

function Shared({ of: { sharedBags, isSameLot, isSameCategory } }: { readonly of: SimilarComplaint }): VNode {
  const possible = sharedBags.filter(({ word }) => word === 'possible');
  return (
    <>
      <SharedBags of={sharedBags.filter(({ word }) => word !== 'possible')} />
      {possible.length === 0 ? null : (
        <details>
          <summary>{say('similar-possible-count', { count: possible.length })}</summary>
          <SharedBags of={possible} />
        </details>
      )}
      {isSameLot ? <div>{say('similar-lot')}</div> : null}
      {isSameCategory ? <div>{say('similar-category')}</div> : null}
    </>
  );
}

function SharedBags({ of }: { readonly of: SimilarComplaint['sharedBags'] }): VNode {
  return (
    <>
      {of.map(({ bagId, bagNumber, word }) => (
        <div key={bagId}>
          <a href={`/thread?code=${bagNumber}`}>{bagNumber}</a> {say(`similar-${word}`)}
        </div>
      ))}
    </>
  );
}
