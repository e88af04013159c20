import type { VNode } from 'preact';
import { recallAnswers } from '../../recalls/recall-words.js';
import { say } from '../../platform/sentences/sentences.js';
import { countText } from '../../platform/web/figures-text.js';
import { PrintSheet } from '../../platform/web/kit/print-sheet.js';
import { Table } from '../../platform/web/kit/table.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import type { FiguresOfText } from '../../recalls/frozen-figures.js';
import type { RecallFile } from './recall-file.js';

interface NoticeProps {
  readonly viewer: Viewer;
  readonly file: RecallFile;
  readonly customer: FiguresOfText['customers'][number];
}

/** The notice to one customer, to be printed: what it got, what to do, and a slip to send back. */
export function noticePage({ viewer, file, customer }: NoticeProps): VNode {
  const { recall, customerNames } = file;
  const known = customerNames.get(customer.customerId);
  const title = say(`notice-title-${recall.kind}`, { recall: recall.number });
  return (
    <Shell title={title} viewer={viewer}>
      <p class="notice">
        <a href={`/quality/recalls/${recall.id}`}>{say('letter-back', { complaint: recall.number })}</a>{' '}
        {say('letter-hint')}
      </p>
      <PrintSheet viewer={viewer} title={title} asAt={file.readAt}>
        <p class="reads">{[known?.name ?? customer.code, known?.telephone ?? ''].join('\n').trim()}</p>
        {recall.kind === 'exercise' ? <p class="sentence">{say('notice-exercise')}</p> : null}
        <p class="sentence">{say(`notice-why-${recall.hazard}`, { reason: recall.reason })}</p>
        <Table
          caption={say('notice-what', { packs: countText(customer.packCount) })}
          columns={[
            { head: say('thread-deliveries'), align: 'code' },
            { head: say('recall-lots') },
            { head: say('recall-unit') },
          ]}
          rows={customer.deliveries.map(({ deliveryId, number, lotCodes, ssccs }) => ({
            key: deliveryId,
            cells: [number, <Codes key="lots" codes={lotCodes} />, <Codes key="units" codes={ssccs} />],
          }))}
        />
        <ol>
          <li>{say('notice-stop')}</li>
          <li>{say('notice-tell')}</li>
          <li>{say('notice-answer')}</li>
        </ol>
        <Table
          caption={say('notice-slip', { recall: recall.number })}
          columns={[{ head: say('recall-answer-column') }, { head: say('recall-packs'), align: 'number' }]}
          rows={recallAnswers.map((answer) => ({ key: answer, cells: [say(`recall-said-${answer}`), '________'] }))}
        />
        <p>{say('notice-signature')}</p>
        <p class="quiet">{say('recall-report-law')}</p>
      </PrintSheet>
    </Shell>
  );
}

/** Codes one after the other: a line may end between them, never within one. */
function Codes({ codes }: { readonly codes: readonly string[] }): VNode {
  return (
    <>
      {codes.map((code, place) => (
        <span key={code}>
          {place === 0 ? '' : ', '}
          <span class="code">{code}</span>
        </span>
      ))}
    </>
  );
}
