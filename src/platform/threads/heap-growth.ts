import { setFlagsFromString } from 'node:v8';

/**
 * Has the engine collect a heap once it has grown by a tenth of what lives in it (eight megabytes at least), where it would
 * wait for a third to two fifths: docs/decisions/0053-one-file-to-start.md. Said here and not where Node is started, which refuses
 * to start with a flag that its engine does not know.
 */
export function letHeapsGrowSlowly(): void {
  setFlagsFromString('--heap-growing-percent=10');
}
