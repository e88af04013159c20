import type { VNode } from 'preact';
import { HoldLink } from '../../disposition/hold-link.js';
import { propertyText } from '../../laboratory/sample-text.js';
import { say } from '../../platform/sentences/sentences.js';
import { kilogramsText } from '../../platform/web/figures-text.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act, ActLink } from '../../platform/web/kit/act.js';
import { ChoiceEntry, TextEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import { Figures } from '../../platform/web/kit/figures.js';
import { Table } from '../../platform/web/kit/table.js';
import { localText } from '../../platform/web/local-text.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import { StateMark } from '../../platform/web/state-mark.js';
import type { BagFile } from './bag-file.js';
import type { BagReach } from '../../tracing/bag-reach.js';
import { BagReachBox } from './bag-reach.js';
import { DecisionBox } from './decision-box.js';
import { Decided, Lacks } from './file-parts.js';
import type { FileTrouble } from './file-trouble.js';

interface BagFileProps {
  readonly viewer: Viewer;
  readonly file: BagFile;
  /** Null: nobody asked. */
  readonly reach: BagReach | null;
  readonly trouble: FileTrouble | null;
}

/** One bag: what is missing, what is known, and the decision. */
export function bagFilePage({ viewer, file, reach, trouble }: BagFileProps): VNode {
  const { bag, sequence } = file;
  const seen = { kind: 'bulk-bag', id: bag.id, sequence };
  return (
    <Shell title={say('bag-title', { bag: bag.number })} viewer={viewer}>
      {trouble?.changed ?? null}
      <div class="file">
        <div>
          <Lacks lacks={file.lacks} timeZone={viewer.timeZone} />
          <Decided decisions={file.decisions} timeZone={viewer.timeZone} />
        </div>
        <BagFacts file={file} viewer={viewer} />
      </div>
      {reach === null ? null : <BagReachBox reach={reach} />}
      <DecisionBox
        viewer={viewer}
        action={`/quality/bags/${bag.id}/decision`}
        trouble={trouble?.of === 'decision' ? trouble.form : null}
        seen={seen}
        seconds={file.seconds}
      />
      <GradeBox viewer={viewer} file={file} trouble={trouble?.of === 'grade' ? trouble.form : null} />
    </Shell>
  );
}

function BagFacts({ file, viewer }: { file: BagFile; viewer: Viewer }): VNode {
  const { bag, laboratory } = file;
  const outside = new Set(laboratory.outsideResults.map(({ id }) => id));
  return (
    <section class="card" aria-labelledby="facts">
      <h2 id="facts">{say('file-facts')}</h2>
      <p>
        <StateMark state={file.state} />
      </p>
      <Figures
        of={[
          { label: say('bag-grade'), value: file.grade.name },
          { label: say('bag-net'), value: bag.netGrams === null ? '–' : kilogramsText(bag.netGrams), unit: 'kg' },
          { label: say('bag-left'), value: kilogramsText(bag.remainingGrams), unit: 'kg' },
          { label: say('bag-where'), value: say(`bag-status-${bag.status}`) },
          {
            label: say('thread-dryer-shift'),
            value:
              file.shift === null
                ? '–'
                : say('thread-shift', { on: file.shift.productionOn, shift: file.shift.shiftCode }),
          },
        ]}
      />
      <Table
        caption={say('bag-results')}
        columns={[
          { head: say('bag-column-property') },
          { head: say('bag-column-figure'), align: 'number' },
          { head: say('bag-column-sample') },
          { head: say('bag-column-verdict') },
        ]}
        rows={laboratory.results.map((result) => ({
          key: result.id,
          isLoud: outside.has(result.id),
          cells: [
            propertyText(result.property),
            result.amount,
            <span key="sample">
              <a href={`/samples/${result.sampleId}`}>{result.sampleNumber}</a> {say(`stands-for-${result.standsFor}`)}
              <br />
              <small>{localText(result.analysedAt, viewer.timeZone)}</small>
            </span>,
            outside.has(result.id) ? say('result-outside') : say('result-within'),
          ],
        }))}
        empty={say('no-results-yet')}
      />
      <div class="acts">
        <ActLink href={`/thread?code=${bag.number}`} says={say('bag-thread')} />
        <ActLink href={`/quality/bags/${bag.id}?reach=true#reach`} says={say('bag-reach-if-bad')} />
        <HoldLink viewer={viewer} kind="bulk-bag" id={bag.id} />
      </div>
    </section>
  );
}

function GradeBox({ viewer, file, trouble }: { viewer: Viewer; file: BagFile; trouble: FormTrouble | null }): VNode {
  const { bag, sequence } = file;
  return (
    <details class="card" open={trouble !== null}>
      <summary>{say('grade-head')}</summary>
      <EntryForm
        viewer={viewer}
        id="grade"
        action={`/quality/bags/${bag.id}/grade`}
        trouble={trouble}
        seen={{ kind: 'bulk-bag', id: bag.id, sequence }}
      >
        <ChoiceEntry
          name="gradeId"
          label={say('grade-other')}
          choices={file.grades
            .filter(({ id }) => id !== file.grade.id)
            .map(({ id, name }) => ({ value: id, says: name }))}
          trouble={trouble}
          required
        />
        <TextEntry name="reason" label={say('grade-reason')} maxLength={1000} trouble={trouble} required />
        <Act says={say('grade-act')} tone="plain" />
      </EntryForm>
    </details>
  );
}
