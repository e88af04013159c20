import type { VNode } from 'preact';
import { mayDo } from '../platform/actor.js';
import { say } from '../platform/sentences/sentences.js';
import { Table } from '../platform/web/kit/table.js';
import { OlderEntries } from '../platform/web/older-entries.js';
import { localText } from '../platform/web/local-text.js';
import type { Viewer } from '../platform/web/request.js';
import { Shell } from '../platform/web/shell.js';
import type { DeviceRow } from './devices.js';
import { FormTrouble } from './form-trouble.js';

interface DevicesProps {
  readonly viewer: Viewer;
  readonly devices: readonly DeviceRow[];
  readonly older: string | null;
  readonly trouble: readonly string[];
  readonly entered: { readonly code: string; readonly kind: string };
  readonly kinds: readonly string[];
  readonly formKey: string;
}

/** The devices of the site; an administrator enrols the one in hand. */
export function devicesPage(props: DevicesProps): VNode {
  const { viewer, devices, older, trouble } = props;
  return (
    <Shell title={say('devices-title')} viewer={viewer}>
      <FormTrouble sentences={trouble} />
      <Table
        caption={say('devices-caption')}
        columns={[
          { head: say('device-code') },
          { head: say('people-field-kind') },
          { head: say('device-token-since') },
        ]}
        rows={devices.map((device) => ({
          key: device.id,
          cells: [
            device.code,
            say(`device-${device.kind}`),
            device.tokenSetAt === null ? say('device-withdrawn') : localText(device.tokenSetAt, viewer.timeZone),
          ],
        }))}
      />
      <OlderEntries path="/devices" older={older} />
      {mayDo(viewer.actor.roles, 'keep-people') ? <EnrolForm {...props} /> : null}
    </Shell>
  );
}

function EnrolForm({ viewer, entered, kinds, formKey }: DevicesProps): VNode {
  return (
    <form class="card" method="post" action="/devices">
      <h2>{say('enrol-this-device')}</h2>
      <p>{say('enrol-says')}</p>
      <input type="hidden" name="csrf" value={viewer.csrfToken} />
      <input type="hidden" name="formKey" value={formKey} />
      <label for="code">
        {say('device-code')}
        <span class="hint">{say('device-code-hint')}</span>
      </label>
      <input id="code" name="code" type="text" autocomplete="off" maxLength={30} required value={entered.code} />
      <label for="kind">{say('people-field-kind')}</label>
      <select id="kind" name="kind" required>
        {kinds.map((kind) => (
          <option key={kind} value={kind} selected={kind === entered.kind}>
            {say(`device-${kind}`)}
          </option>
        ))}
      </select>
      <p>
        <button type="submit">{say('enrol-this-device')}</button>
      </p>
    </form>
  );
}
