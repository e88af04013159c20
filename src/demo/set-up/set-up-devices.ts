import { EnrolDevice } from '../../people/enrol-device.js';
import type { EnrolledKind } from '../../people/device.form.js';
import { askedByHouse, type Give } from './demo-hand.js';

/** A device of the demo's floor, and what a browser must show to be it. */
export interface DemoDevice {
  readonly code: string;
  readonly kind: EnrolledKind;
  readonly token: string;
}

/** A tablet at each line, and a handheld on the dock. Their tokens are drawn, as those of every device are. */
export async function setUpDevices(
  give: Give,
  siteId: string,
  lineCodes: readonly string[],
): Promise<readonly DemoDevice[]> {
  const wanted = [
    ...lineCodes.map((code) => ({ code: `tablet-line-${code.toLowerCase()}`, kind: 'shared-tablet' as const })),
    { code: 'handheld-dock', kind: 'handheld' as const },
  ];
  const devices: DemoDevice[] = [];
  for (const form of wanted) {
    const { token } = await give(EnrolDevice).execute(askedByHouse(siteId, 'administrator'), form);
    if (token !== null) devices.push({ ...form, token });
  }
  return devices;
}
