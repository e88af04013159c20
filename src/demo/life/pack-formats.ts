import type { MachineNature } from '../plant-physics/packing-machine.js';
import type { FormatCode } from './demo-plan.js';

export const nominalGrams: Readonly<Record<FormatCode, number>> = { 'WS-2KG': 2000, 'WS-1KG': 1000, 'XF-1KG': 1000 };
export const packsPerPallet: Readonly<Record<FormatCode, number>> = { 'WS-2KG': 480, 'WS-1KG': 900, 'XF-1KG': 900 };

/** How a machine fills a format in truth. Setpoints and spreads are invented. */
export function natureOf(packs: { readonly format: FormatCode; readonly perMinute: number }): MachineNature {
  const nominal = nominalGrams[packs.format];
  return {
    packsPerMinute: packs.perMinute,
    setpointGrams: nominal + (nominal === 2000 ? 3.2 : 2.1),
    spreadGrams: nominal === 2000 ? 4 : 2.8,
    rejectShare: 0.003,
  };
}
