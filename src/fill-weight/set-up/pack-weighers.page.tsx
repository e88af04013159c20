import type { VNode } from 'preact';
import { mayDo } from '../../platform/actor.js';
import { say } from '../../platform/sentences/sentences.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { gramsText } from '../weight-text.js';
import { Act, ActLink } from '../../platform/web/kit/act.js';
import { ChoiceEntry, NumberEntry, TextEntry, TickEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import { Table } from '../../platform/web/kit/table.js';
import { localText } from '../../platform/web/local-text.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import { StateMark } from '../../platform/web/state-mark.js';
import type { LineStanding } from '../mqtt/mqtt-line.js';
import type { PackWeigherRow } from '../pack-weighers.js';

interface PackWeighersProps {
  readonly viewer: Viewer;
  readonly weighers: readonly PackWeigherRow[];
  readonly lines: readonly { readonly id: string; readonly code: string; readonly name: string }[];
  readonly mqtt: LineStanding;
  readonly trouble: FormTrouble | null;
}

/** The machines that weigh every pack: which there are, what came of them, and a form for a new one. */
export function packWeighersPage({ viewer, weighers, lines, mqtt, trouble }: PackWeighersProps): VNode {
  return (
    <Shell title={say('weighers-title')} viewer={viewer}>
      <p>{say('weighers-says')}</p>
      <Table
        caption={say('weighers-caption')}
        empty={say('weighers-none')}
        columns={[
          { head: say('weigher-code') },
          { head: say('weigher-line') },
          { head: say('weigher-step'), align: 'number' },
          { head: say('weigher-sent'), align: 'number' },
          { head: say('weigher-last') },
          { head: say('weigher-mqtt') },
        ]}
        rows={weighers.map((one) => ({
          key: one.id,
          cells: [
            <a key="to" href={`/set-up/pack-weighers/${one.id}`}>
              {one.code}
            </a>,
            one.lineCode,
            say('weigher-grams', { grams: gramsText(one.stepMilligrams) }),
            one.weightCount,
            one.lastReceivedAt === null ? say('weigher-never') : localText(one.lastReceivedAt, viewer.timeZone),
            say(one.takesMqtt ? 'weigher-yes' : 'weigher-no'),
          ],
        }))}
      />
      <BrokerStanding mqtt={mqtt} viewer={viewer} />
      {mayDo(viewer.actor.roles, 'keep-people') ? (
        <AddForm viewer={viewer} lines={lines} trouble={trouble} />
      ) : (
        <p class="quiet">{say('weighers-add-not-yours')}</p>
      )}
      <p class="caution">{say('weighers-caution')}</p>
      <p class="acts">
        <ActLink href="/set-up" says={say('weighers-back')} />
      </p>
    </Shell>
  );
}

function BrokerStanding({ mqtt, viewer }: { readonly mqtt: LineStanding; readonly viewer: Viewer }): VNode {
  if (mqtt.topics === null) return <p class="quiet">{say('weighers-mqtt-off')}</p>;
  const facts = {
    host: mqtt.host,
    topics: mqtt.topics.join(', '),
    since: mqtt.since === null ? null : localText(mqtt.since, viewer.timeZone),
  };
  if (mqtt.isConnected) return <p>{say('weighers-mqtt-there', facts)}</p>;
  return (
    <p>
      <StateMark state="doubtful" /> {say('weighers-mqtt-away', facts)}
    </p>
  );
}

type AddFormProps = Pick<PackWeighersProps, 'viewer' | 'lines' | 'trouble'>;

function AddForm({ viewer, lines, trouble }: AddFormProps): VNode {
  const asks = (name: string, code: string) => ({
    name,
    label: say(`weigher-${code}`),
    hint: say(`weigher-${code}-hint`),
    trouble,
  });
  return (
    <EntryForm viewer={viewer} action="/set-up/pack-weighers" trouble={trouble} id="form-weigher">
      <h2>{say('weighers-add')}</h2>
      <TextEntry {...asks('machineCode', 'machine')} required isCode maxLength={30} />
      <TextEntry {...asks('code', 'code')} required isCode maxLength={20} />
      <ChoiceEntry
        {...asks('lineId', 'line')}
        required
        choices={lines.map(({ id, code, name }) => ({ value: id, says: code, about: name }))}
      />
      <NumberEntry {...asks('stepGrams', 'step')} required unit="g" />
      <NumberEntry {...asks('errorGrams', 'error')} required unit="g" />
      <NumberEntry {...asks('headCount', 'heads')} />
      <TickEntry {...asks('countsPacks', 'counts')} checked />
      <TickEntry {...asks('rejectsPacks', 'rejects')} checked />
      <Act says={say('weighers-add')} />
    </EntryForm>
  );
}
