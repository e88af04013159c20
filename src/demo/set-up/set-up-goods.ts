import type { Asked } from '../../journal/entry-draft.js';
import { AddGrade } from '../../plant/add-grade.js';
import { AddPackFormat } from '../../plant/add-pack-format.js';
import { SetSpecification } from '../../plant/set-specification.js';
import { codePattern } from '../life/coder.js';
import type { FormatCode, GradeCode } from '../life/demo-plan.js';
import { gradeLimits } from '../life/live-bag.js';
import { nominalGrams, packsPerPallet } from '../life/pack-formats.js';
import { idIn, type Give, type PlantIds } from './demo-hand.js';

/** The methods of the demo's laboratory, by their numbers in the ICUMSA method book (from memory). */
export const methods = { 'moisture-percent': 'GS2/1/3/9-15', 'colour-iu': 'GS2/3-10' } as const;

/** Grades with what they must be, and the packs that they go into. */
export async function setUpGoods(
  give: Give,
  asked: Asked,
  withCheckDigit: (digits: string) => string,
): Promise<Pick<PlantIds, 'grades' | 'formats'>> {
  const grades = await addGrades(give, asked);
  const formats = new Map<FormatCode, string>();
  const add = async (code: FormatCode, name: string, of: { item: string; takes: readonly GradeCode[] }) => {
    const nominalMilligrams = nominalGrams[code] * 1000;
    const { id } = await give(AddPackFormat).execute(asked, {
      code,
      name,
      gtin: withCheckDigit(`9520123${of.item}`),
      nominalGrams: nominalGrams[code],
      assumedLowerMilligrams: Math.round(nominalMilligrams * 0.995),
      assumedUpperMilligrams: Math.round(nominalMilligrams * 1.01),
      packTareGrams: nominalGrams[code] === 2000 ? 14 : 9,
      packsPerPallet: packsPerPallet[code],
      palletTareGrams: 24_000,
      codePattern,
      bestBeforeMonths: null,
      gradeIds: of.takes.map((grade) => idIn(grades, grade)),
    });
    formats.set(code, id);
  };
  await add('WS-2KG', 'White sugar 2 kg', { item: '00010', takes: ['WS2', 'WS1'] });
  await add('WS-1KG', 'White sugar 1 kg', { item: '00020', takes: ['WS2', 'WS1'] });
  await add('XF-1KG', 'Extra white sugar 1 kg', { item: '00030', takes: ['WS1'] });
  return { grades, formats };
}

async function addGrades(give: Give, asked: Asked): Promise<ReadonlyMap<GradeCode, string>> {
  const grades = new Map<GradeCode, string>();
  const names = [
    ['WS2', 'White sugar', 'tip-at-risk'],
    ['WS1', 'Extra white sugar', 'released-only'],
    ['IND', 'White sugar for makers', 'released-only'],
  ] as const;
  for (const [code, name, tippingRule] of names) {
    const { id } = await give(AddGrade).execute(asked, { code, name, tippingRule });
    grades.set(code, id);
    const limits = gradeLimits[code];
    const line = (property: keyof typeof methods, maximum: number) => ({
      property,
      method: methods[property],
      required: true,
      maximum: String(maximum),
    });
    const lines = [line('moisture-percent', limits.moisturePercent), line('colour-iu', limits.colourIu)];
    await give(SetSpecification).execute(asked, { gradeId: id, lines });
  }
  return grades;
}
