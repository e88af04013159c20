import type { VNode } from 'preact';
import type { AskedLine, WaitingSample } from '../../laboratory/asked-lines.js';
import { ResultTable } from '../../laboratory/result-table.js';
import { coverText, propertyText } from '../../laboratory/sample-text.js';
import type { SampleResult, SampleRow } from '../../laboratory/samples.js';
import { mayDo } from '../../platform/actor.js';
import { say } from '../../platform/sentences/sentences.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act, ActLink } from '../../platform/web/kit/act.js';
import { ChoiceEntry, NumberEntry, TextEntry, TickEntry, TimeEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import { Table } from '../../platform/web/kit/table.js';
import { localText } from '../../platform/web/local-text.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import { lineWord } from './results.form.js';

interface ResultsProps {
  readonly viewer: Viewer;
  readonly waiting: readonly WaitingSample[];
}

/** The samples that wait for results, the oldest first. */
export function resultsPage({ viewer, waiting }: ResultsProps): VNode {
  const { timeZone } = viewer;
  return (
    <Shell title={say('results-title')} viewer={viewer}>
      <p class="sentence">{say(waiting.length === 0 ? 'results-none' : 'results-says', { count: waiting.length })}</p>
      {mayDo(viewer.actor.roles, 'take-samples') ? (
        <div class="acts">
          <ActLink href="/quality/samples/new" says={say('sample-new')} accessKey="s" />
        </div>
      ) : null}
      <Table
        caption={say('results-waiting')}
        columns={[
          { head: say('lab-column-sample') },
          { head: say('lab-column-stands-for') },
          { head: say('lab-column-taken') },
          { head: say('results-lacking') },
          { head: say('desk-act') },
        ]}
        rows={waiting.map(({ sample, missing }) => ({
          key: sample.id,
          cells: [
            sample.number,
            coverText(sample, timeZone),
            localText(sample.takenAt, timeZone),
            missing.map(({ property }) => propertyText(property)).join(', '),
            <ActLink key="act" href={`/quality/results/${sample.id}`} says={say('results-enter')} />,
          ],
        }))}
        empty={say('results-none')}
      />
    </Shell>
  );
}

interface EnterResultProps {
  readonly viewer: Viewer;
  readonly sample: SampleRow;
  readonly results: readonly SampleResult[];
  readonly asked: readonly AskedLine[];
  readonly trouble: FormTrouble | null;
}

/** One sample: what was found already, and the next figure. */
export function enterResultPage({ viewer, sample, results, asked, trouble }: EnterResultProps): VNode {
  return (
    <Shell title={say('results-of', { sample: sample.number })} viewer={viewer}>
      <p class="sentence">{coverText(sample, viewer.timeZone)}</p>
      <p>{say('sample-taken', { at: localText(sample.takenAt, viewer.timeZone) })}</p>
      <ResultTable results={results} viewer={viewer} />
      {mayDo(viewer.actor.roles, 'report-results') ? (
        <ResultBox viewer={viewer} sample={sample} results={results} asked={asked} trouble={trouble} />
      ) : null}
      <p>
        <a href="/quality/results">{say('results-title')}</a>
      </p>
    </Shell>
  );
}

function ResultBox({ viewer, sample, results, asked, trouble }: EnterResultProps): VNode {
  const has = (line: AskedLine): boolean =>
    results.some(({ property, method, isVoid }) => !isVoid && property === line.property && method === line.method);
  const [first] = asked.filter((line) => !has(line));
  return (
    <section class="card" aria-labelledby="enter">
      <h2 id="enter">{say('results-enter-head')}</h2>
      <EntryForm viewer={viewer} action={`/quality/results/${sample.id}`} trouble={trouble}>
        <ChoiceEntry
          name="line"
          label={say('results-line')}
          as="tiles"
          value={first === undefined ? undefined : lineWord(first)}
          choices={asked.map((line) => ({
            value: lineWord(line),
            says: propertyText(line.property),
            about: has(line) ? `${line.method}, ${say('results-has-one')}` : line.method,
          }))}
          trouble={trouble}
          required
        />
        <NumberEntry name="amount" label={say('results-amount')} trouble={trouble} required autofocus />
        <TickEntry name="isRetest" label={say('results-retest')} hint={say('results-retest-hint')} trouble={trouble} />
        {trouble?.code === 'result-unusual' ? (
          <TickEntry name="isSure" label={say('results-sure')} trouble={trouble} />
        ) : null}
        <TimeEntry
          name="analysedAt"
          label={say('results-when')}
          hint={say('results-when-hint')}
          timeZone={viewer.timeZone}
          trouble={trouble}
        />
        <TextEntry
          name="reason"
          label={say('results-late')}
          hint={say('results-late-hint')}
          maxLength={300}
          trouble={trouble}
        />
        <Act says={say('results-act')} />
      </EntryForm>
    </section>
  );
}
