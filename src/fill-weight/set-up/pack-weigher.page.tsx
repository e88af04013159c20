import type { ComponentChildren, VNode } from 'preact';
import { mayDo } from '../../platform/actor.js';
import { say } from '../../platform/sentences/sentences.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act, ActLink } from '../../platform/web/kit/act.js';
import { TextEntry, TickEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import { PrintSheet } from '../../platform/web/kit/print-sheet.js';
import { Table } from '../../platform/web/kit/table.js';
import { localText } from '../../platform/web/local-text.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import type { LineStanding } from '../mqtt/mqtt-line.js';
import type { PackWeigherRow } from '../pack-weighers.js';
import { gramsText } from '../weight-text.js';

interface PackWeigherProps {
  readonly viewer: Viewer;
  readonly weigher: PackWeigherRow;
  readonly mqtt: LineStanding;
  readonly trouble: { readonly of: string; readonly why: FormTrouble } | null;
}

/** One pack weigher: what it is, by which ways its weights may come, and how it is taken off its line. */
export function packWeigherPage({ viewer, weigher, mqtt, trouble }: PackWeigherProps): VNode {
  const form = (to: string, children: ComponentChildren, tone: 'asked' | 'plain' | 'careful' = 'plain') => (
    <EntryForm
      viewer={viewer}
      action={`/set-up/pack-weighers/${weigher.id}/${to}`}
      trouble={trouble?.of === to ? trouble.why : null}
      id={`form-${to}`}
    >
      <h2>{say(`weigher-${to}-title`)}</h2>
      <p>{say(`weigher-${to}-says`)}</p>
      {children}
      <Act says={say(`weigher-${to}-act`)} tone={tone} />
    </EntryForm>
  );
  const maySetUp = mayDo(viewer.actor.roles, 'set-up-plant');
  return (
    <Shell title={say('weigher-title', { code: weigher.code, line: weigher.lineCode })} viewer={viewer}>
      <Facts viewer={viewer} weigher={weigher} />
      <MqttTopics weigher={weigher} mqtt={mqtt} />
      {maySetUp
        ? form(
            'way',
            <TickEntry name="takesMqtt" label={say('weigher-takes-mqtt')} checked={weigher.takesMqtt} />,
            'asked',
          )
        : null}
      {mayDo(viewer.actor.roles, 'keep-people') ? form('token', null) : null}
      {maySetUp
        ? form(
            'withdrawal',
            <TextEntry
              name="reason"
              label={say('weigher-reason')}
              hint={say('weigher-reason-hint')}
              required
              maxLength={300}
              trouble={trouble?.of === 'withdrawal' ? trouble.why : null}
            />,
            'careful',
          )
        : null}
      <p class="acts">
        <ActLink href={`/set-up/pack-weighers/${weigher.id}/files`} says={say('weigher-files-link')} />
        <ActLink href="/set-up/pack-weighers" says={say('weighers-title')} />
      </p>
    </Shell>
  );
}

function Facts({ viewer, weigher }: Pick<PackWeigherProps, 'viewer' | 'weigher'>): VNode {
  const grams = (milligrams: number) => say('weigher-grams', { grams: gramsText(milligrams) });
  const yesNo = (is: boolean) => say(is ? 'weigher-yes' : 'weigher-no');
  const { lastReceivedAt } = weigher;
  const rows = [
    ['machine', weigher.deviceCode],
    ['step', grams(weigher.stepMilligrams)],
    ['error', grams(weigher.maximumPermissibleErrorMilligrams)],
    ['heads', weigher.headCount ?? say('weigher-one-head')],
    ['counts', yesNo(weigher.countsPacks)],
    ['rejects', yesNo(weigher.rejectsPacks)],
    ['sent', weigher.weightCount],
    ['last', lastReceivedAt === null ? say('weigher-never') : localText(lastReceivedAt, viewer.timeZone)],
  ] as const;
  return (
    <Table
      caption={say('weigher-facts')}
      hasHiddenCaption
      columns={[{ head: say('weigher-what') }, { head: say('weigher-is') }]}
      rows={rows.map(([code, shown]) => ({ key: code, cells: [say(`weigher-${code}`), shown] }))}
    />
  );
}

function MqttTopics({ weigher, mqtt }: Pick<PackWeigherProps, 'weigher' | 'mqtt'>): VNode | null {
  if (!weigher.takesMqtt) return null;
  if (mqtt.topics === null) return <p>{say('weigher-mqtt-off')}</p>;
  const [topic = '', checks = ''] = mqtt.topics.map((one) => one.replace('+', weigher.code));
  return <p>{say('weigher-mqtt-topics', { topic, checks, answers: topic.replace(/weights$/, 'answers') })}</p>;
}

interface TokenProps {
  readonly viewer: Viewer;
  readonly weigher: PackWeigherRow;
  /** Null where the same form was sent again: a token is shown once. */
  readonly token: string | null;
  readonly asAt: string;
}

/** The token of a machine, to be copied into it now. */
export function weigherTokenPage({ viewer, weigher, token, asAt }: TokenProps): VNode {
  const title = say('weigher-token-of', { code: weigher.code });
  return (
    <Shell title={title} viewer={viewer}>
      {token === null ? (
        <p class="sentence">{say('weigher-token-shown')}</p>
      ) : (
        <PrintSheet viewer={viewer} title={title} asAt={asAt}>
          <p>{say('weigher-token-copy', { machine: weigher.deviceCode })}</p>
          <p class="code">{token}</p>
          <p>{say('weigher-token-use')}</p>
        </PrintSheet>
      )}
      <p class="acts">
        <ActLink
          href={`/set-up/pack-weighers/${weigher.id}`}
          says={say('weigher-back', { code: weigher.code })}
          tone="asked"
        />
        <ActLink href="/set-up/pack-weighers" says={say('weighers-title')} />
      </p>
    </Shell>
  );
}
