import type { VNode } from 'preact';
import { say } from '../../platform/sentences/sentences.js';
import { Act } from '../../platform/web/kit/act.js';
import { Table } from '../../platform/web/kit/table.js';
import { BarePage } from '../../platform/web/shell.js';
import { demoBadgeOf, type DemoPerson } from '../set-up/demo-people.js';
import type { DemoDevice } from '../set-up/demo-device.js';

interface EntranceProps {
  readonly devices: readonly Pick<DemoDevice, 'code' | 'kind'>[];
  readonly people: readonly DemoPerson[];
  /** The device that this browser is; null: none. */
  readonly hereCode: string | null;
}

/** Where whoever looks at the demo chooses what the browser is to be, and finds what to sign in with. */
export function entrancePage({ devices, people, hereCode }: EntranceProps): VNode {
  return (
    <BarePage title={say('demo-entrance-title')} isWide>
      <p>{say('demo-entrance-says')}</p>
      <h2>{say('demo-devices')}</h2>
      <p>
        {hereCode === null ? say('demo-is-no-device') : say('demo-is-device', { device: hereCode })}{' '}
        {say('demo-devices-say')}
      </p>
      {devices.length === 0 ? <p>{say('demo-no-devices')}</p> : null}
      <div class="acts">
        {devices.map(({ code, kind }) => (
          <form key={code} method="post" action={`/demo/devices/${code}`}>
            <Act says={say('demo-become', { device: code, kind: say(`device-${kind}`) })} tone="plain" />
          </form>
        ))}
        <form method="post" action="/demo/no-device">
          <Act says={say('demo-become-none')} tone="plain" />
        </form>
      </div>
      <h2>{say('demo-people')}</h2>
      <p>{say('demo-people-say')}</p>
      <Table
        caption={say('demo-people')}
        hasHiddenCaption
        columns={[
          { head: say('people-field-name') },
          { head: say('people-roles') },
          { head: say('people-field-code'), align: 'code' },
          { head: say('people-field-password'), align: 'code' },
          { head: say('people-field-pin'), align: 'code' },
          { head: say('people-field-badge'), align: 'code' },
        ]}
        rows={people.map((person) => ({
          key: person.code,
          cells: [
            person.name,
            say(`role-${person.role}`),
            person.code,
            person.password,
            person.pin ?? '–',
            person.pin === null ? '–' : demoBadgeOf(person),
          ],
        }))}
      />
      <p>
        <a href="/sign-in">{say('sign-in')}</a>
      </p>
    </BarePage>
  );
}
