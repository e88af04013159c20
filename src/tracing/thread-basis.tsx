import type { VNode } from 'preact';
import { modelText } from '../hopper/flow-text.js';
import type { ModelUsed } from '../hopper/model-used.js';
import { say } from '../platform/sentences/sentences.js';
import { localText } from '../platform/web/local-text.js';
import type { Thread } from './thread.js';

interface ThreadBasisProps {
  readonly thread: Thread;
  readonly timeZone: string;
}

/** What the answer rests on: what *likely* was reckoned by in each hopper, and on which trial; when it was read. */
export function ThreadBasis({ thread, timeZone }: ThreadBasisProps): VNode {
  return (
    <section class="quiet">
      <p>{say('thread-basis', { at: localText(thread.readAt, timeZone) })}</p>
      <ul>
        {distinctModels(thread.models).map((model) => (
          <li key={model.periodId}>
            <a href={`/hoppers/${model.hopperId}/flow`}>{model.hopperCode}</a>
            {': '}
            {say('hopper-likely-by', { model: modelText(model), permille: model.likelyPermille })}{' '}
            <OnTrial model={model} timeZone={timeZone} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function OnTrial({ model, timeZone }: { readonly model: ModelUsed; readonly timeZone: string }): VNode | null {
  if (model.trialId === null || model.validFrom === null) return null;
  return (
    <a href={`/tracer-trials/${model.trialId}`}>
      {say('thread-on-trial', { number: model.trialNumber, since: localText(model.validFrom, timeZone) })}
    </a>
  );
}

/** A hopper whose periods went by one choice is named once. */
function distinctModels(models: readonly ModelUsed[]): readonly ModelUsed[] {
  const seen = new Map<string, ModelUsed>();
  for (const model of models) {
    const key = `${model.hopperId} ${model.kind} ${model.validFrom ?? ''}`;
    if (!seen.has(key)) seen.set(key, model);
  }
  return [...seen.values()];
}
