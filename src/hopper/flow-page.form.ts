import { readDecimal } from '../core/units/decimals.js';
import { readKilograms } from '../core/units/grams.js';
import { BadForm } from '../platform/refusal.js';
import { TextField } from '../platform/web/fields.js';
import { mostSamples, TrialHeadForm, type RecordTrialForm, type TrialSampleForm } from './flow-model.form.js';

/** A trial as a page sends it: its samples are typed or pasted one a line, where they were taken and their colour. */
export class TrialOnPageForm extends TrialHeadForm {
  @TextField({ most: 8000, says: 'One a line: kilograms (or the number of the pack), then the colour' })
  samplesText!: string;
}

/**
 * What the command takes, from what was typed.
 *
 * @throws {BadForm} naming the first line that cannot be read
 */
export function trialOfPage({ samplesText, ...head }: TrialOnPageForm): RecordTrialForm {
  const isByPack = head.packGrams != null;
  const lines = samplesText.split('\n').flatMap((text, place) => (text.trim() === '' ? [] : [{ text, place }]));
  if (lines.length > mostSamples) throw badLine(mostSamples + 1, '');
  const samples = lines.map(({ text, place }) => readSample(text, isByPack) ?? throwLine(place + 1, text));
  return { ...head, samples };
}

function throwLine(line: number, text: string): never {
  throw badLine(line, text);
}

function badLine(line: number, text: string): BadForm {
  const facts = { line, text: text.trim().slice(0, 40) };
  return new BadForm([{ field: 'samplesText', code: 'trial-line', facts }]);
}

function readSample(text: string, isByPack: boolean): TrialSampleForm | null {
  const [place = '', colour = '', more] = text.trim().split(/[;\t ]+/);
  const colourIu = readDecimal(colour);
  if (more !== undefined || !colourIu.ok || Number(colourIu.decimal) < 0) return null;
  if (isByPack) return /^[1-9]\d{0,6}$/.test(place) ? { packNumber: Number(place), colourIu: colourIu.decimal } : null;
  const at = readKilograms(place);
  return at.ok ? { atGrams: at.grams, colourIu: colourIu.decimal } : null;
}
