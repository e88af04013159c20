import { EnrolDevice } from '../../people/enrol-device.js';
import type { DemoDevice } from './demo-device.js';
import { askedByHouse, type Give } from './demo-hand.js';

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
