import type { VNode } from 'preact';
import { say } from '../platform/sentences/sentences.js';
import { Table } from '../platform/web/kit/table.js';
import { OlderEntries } from '../platform/web/older-entries.js';
import { localText } from '../platform/web/local-text.js';
import type { Viewer } from '../platform/web/request.js';
import { Shell } from '../platform/web/shell.js';
import type { ListedPaper } from './paper-list.js';

interface PaperListProps {
  readonly viewer: Viewer;
  readonly papers: readonly ListedPaper[];
  readonly older: string | null;
}

/** All papers that were given out. No number is missing: a void one stays, with the reason. */
export function paperListPage({ viewer, papers, older }: PaperListProps): VNode {
  return (
    <Shell title={say('papers-title')} viewer={viewer}>
      <p class="quiet">{say('papers-says')}</p>
      <Table
        caption={say('papers-caption')}
        columns={[
          { head: say('papers-paper') },
          { head: say('papers-about') },
          { head: say('papers-issued') },
          { head: say('papers-standing') },
        ]}
        rows={papers.map((paper) => ({
          key: paper.id,
          cells: [
            <a href={`/papers/${paper.id}/file`}>
              {say(`paper-${paper.kind}`)}
              {paper.number === null ? '' : ` ${paper.number}`}
            </a>,
            <Subject paper={paper} />,
            localText(paper.issuedAt, viewer.timeZone),
            paper.isVoid ? say('papers-void', { reason: paper.voidReason ?? '–' }) : say('papers-good'),
          ],
        }))}
      />
      <OlderEntries path="/papers" older={older} />
    </Shell>
  );
}

const pageOf: Readonly<Record<string, string>> = {
  delivery: '/deliveries/',
  pallet: '/pallets/',
  'bulk-bag': '/bags/',
};

function Subject({ paper }: { readonly paper: ListedPaper }): VNode {
  const page = pageOf[paper.subjectKind];
  const name = say(`paper-of-${paper.subjectKind}`);
  return page === undefined ? <span>{name}</span> : <a href={`${page}${paper.subjectId}`}>{name}</a>;
}
