import type { Instant } from '../../platform/clock.js';
import type { Tx } from '../../platform/database/unit-of-work.js';
import { Refusal } from '../../platform/refusal.js';
import type { FormatRow } from '../../plant/plant-rows.js';
import { unitItLooksLike } from '../../core/units/unit-it-looks-like.js';
import type { SettingFigures } from './line-setting.form.js';
import { LineSetting } from './line-setting.entity.js';

/** A figure farther than this from the nominal quantity was misread or is of another format. Our own value, no source. */
const plausiblePercent = 20;

/** The figures of a setting in milligrams; null: left alone. */
export interface SetFigures {
  readonly setpointMilligrams: number | null;
  readonly rejectBelowMilligrams: number | null;
  readonly rejectAboveMilligrams: number | null;
}

export interface SettingDraft extends SetFigures {
  readonly id: string;
  readonly lineId: string;
  readonly format: FormatRow;
  readonly changedAt: Instant;
  readonly why: string;
  readonly setBy: string | null;
}

/** What a change of setting answers. */
export interface SettingAnswer extends SetFigures {
  readonly id: string;
  readonly lineId: string;
  readonly formatId: string;
  readonly changedAt: Instant;
}

export function figuresOf(form: SettingFigures): SetFigures {
  return {
    setpointMilligrams: milligramsOf(form.setpointGrams),
    rejectBelowMilligrams: milligramsOf(form.rejectBelowGrams),
    rejectAboveMilligrams: milligramsOf(form.rejectAboveGrams),
  };
}

function milligramsOf(grams: string | null | undefined): number | null {
  return grams == null ? null : Math.round(Number(grams) * 1000);
}

/**
 * Records what a line was set to.
 *
 * @throws {Refusal} `setting-without-figure`, `setting-in-other-unit`, `setting-far-from-nominal`, `setting-limits-crossed`
 */
export async function addLineSetting(tx: Tx, draft: SettingDraft): Promise<SettingAnswer> {
  const { format, why, setBy, ...set } = draft;
  refuseImplausible(draft, format);
  const answer = { ...set, formatId: format.id };
  await tx.insert(LineSetting, { ...answer, why, setBy, voidedBy: null });
  return answer;
}

function refuseImplausible(figures: SetFigures, { nominalGrams, code }: FormatRow): void {
  const { setpointMilligrams, rejectBelowMilligrams: below, rejectAboveMilligrams: above } = figures;
  const given = [setpointMilligrams, below, above].filter((figure) => figure !== null);
  if (given.length === 0) throw new Refusal('setting-without-figure', {});
  const nominal = nominalGrams * 1000;
  const facts = (figure: number) => ({ grams: String(figure / 1000), format: code, nominalGrams });
  const ofOtherUnit = given.find((figure) => unitItLooksLike(figure, nominal) !== null);
  if (ofOtherUnit !== undefined) throw new Refusal('setting-in-other-unit', facts(ofOtherUnit));
  const far = given.find((figure) => Math.abs(figure - nominal) * 100 > nominal * plausiblePercent);
  if (far !== undefined) throw new Refusal('setting-far-from-nominal', { ...facts(far), percent: plausiblePercent });
  if (below !== null && above !== null && below >= above) {
    throw new Refusal('setting-limits-crossed', { below: String(below / 1000), above: String(above / 1000) });
  }
}
