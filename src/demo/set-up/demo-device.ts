import type { EnrolledKind } from '../../people/device.form.js';

/** A device of the demo's floor, and what a browser must show to be it. */
export interface DemoDevice {
  readonly code: string;
  readonly kind: EnrolledKind;
  readonly token: string;
}
