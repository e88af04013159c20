import type { VNode } from 'preact';
import { recallAnswers } from '../../recalls/recall-words.js';
import { say } from '../../platform/sentences/sentences.js';
import { countText, kilogramsText } from '../../platform/web/figures-text.js';
import { Act } from '../../platform/web/kit/act.js';
import { ChoiceEntry, NumberEntry, TextEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import { Table } from '../../platform/web/kit/table.js';
import { localText } from '../../platform/web/local-text.js';
import { WithdrawForm } from '../complaints/withdraw-box.js';
import type { RecallFileProps } from './recall-file-props.js';

/** What customers said, in the order of coming; what was keyed in wrongly can be withdrawn. */
export function Answers({
  viewer,
  file,
  trouble,
  mayRun,
}: RecallFileProps & { readonly mayRun: boolean }): VNode | null {
  const { answers, customerNames, recall } = file;
  if (answers.length === 0) return null;
  return (
    <section class="card" aria-labelledby="answers">
      <h2 id="answers">{say('recall-answers')}</h2>
      <Table
        caption={say('recall-answers-caption')}
        hasHiddenCaption
        columns={[
          { head: say('thread-customer') },
          { head: say('recall-answer-column') },
          { head: say('recall-packs'), align: 'number' },
          { head: say('recall-bags-kilograms'), align: 'number' },
          { head: say('recall-remarks') },
          { head: say('recall-came') },
        ]}
        rows={answers.map((answer) => ({
          key: answer.id,
          cells: [
            <span key="who">
              {customerNames.get(answer.customerId)?.name ?? answer.customerId}
              {mayRun ? (
                <WithdrawForm
                  viewer={viewer}
                  id={`withdraw-${answer.id}`}
                  summary={say('recall-answer-withdraw')}
                  action={`/quality/recalls/${recall.id}/answers/${answer.id}/withdrawal`}
                  trouble={trouble?.of === answer.id ? trouble.form : null}
                />
              ) : null}
            </span>,
            say(`recall-said-${answer.answer}`),
            countText(answer.packCount),
            answer.bagGrams === 0 ? '–' : kilogramsText(answer.bagGrams),
            answer.remarks ?? '',
            localText(answer.answeredAt, viewer.timeZone),
          ],
        }))}
      />
    </section>
  );
}

/** A customer's answer, keyed in from the telephone or from the slip that came back. */
export function AnswerBox({ viewer, file, trouble }: RecallFileProps): VNode {
  const { recall, figures, customerNames } = file;
  const form = trouble?.of === 'answer' ? trouble.form : null;
  const choices = figures.customers.map(({ customerId, code, packRates }) => ({
    value: customerId,
    says: customerNames.get(customerId)?.name ?? code,
    about: say('recall-answer-open', { packs: countText(packRates.openAtCustomers) }),
  }));
  return (
    <section class="card" aria-labelledby="answer-box">
      <h2 id="answer-box">{say('recall-answer-key-in')}</h2>
      <EntryForm viewer={viewer} id="answer-form" action={`/quality/recalls/${recall.id}/answers`} trouble={form}>
        <ChoiceEntry
          name="customerId"
          label={say('thread-customer')}
          choices={choices}
          value={choices.length === 1 ? choices[0]?.value : undefined}
          trouble={form}
          required
        />
        <ChoiceEntry
          name="answer"
          label={say('recall-answer-what')}
          as="tiles"
          choices={recallAnswers.map((value) => ({ value, says: say(`recall-said-${value}`) }))}
          trouble={form}
          required
        />
        <NumberEntry name="packCount" label={say('recall-packs')} trouble={form} />
        <NumberEntry name="bagGrams" label={say('recall-bags-kilograms')} unit="kg" trouble={form} />
        <TextEntry
          name="remarks"
          label={say('recall-remarks')}
          hint={say('recall-remarks-hint')}
          maxLength={500}
          trouble={form}
        />
        <Act says={say('recall-answer-act')} tone="plain" />
      </EntryForm>
    </section>
  );
}
