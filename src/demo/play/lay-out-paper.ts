import { PrintPaperForm } from '../../desks/paper-forms/print-paper-form.js';
import type { DemoHand } from '../set-up/demo-hand.js';

/** Sheets for a night without the server lie ready at each line: of tips and checks, of pallets with numbers of their own. */
export async function layOutPaper(hand: DemoHand): Promise<void> {
  const print = hand.give(PrintPaperForm);
  for (const lineId of hand.plant.lines.values()) {
    await print.execute(hand.asked('lead-M'), { kind: 'tips', lineId });
    await print.execute(hand.asked('lead-M'), { kind: 'pallets', lineId });
    await print.execute(hand.asked('lead-M'), { kind: 'checks', lineId });
  }
}
