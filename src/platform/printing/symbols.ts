import { bwip } from './paper-libraries.js';

/** A dark rectangle of a symbol, in millimetres from the symbol's left upper corner. */
export interface DarkRectangle {
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** A symbol measured out: `widthMm` and `heightMm` hold the quiet zones, which stay empty by geometry. */
export interface MeasuredSymbol {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly quietMm: number;
  readonly darks: readonly DarkRectangle[];
}

/** What `gs1-128` takes beside its text. */
export interface LinearOptions {
  /** The width of the narrowest bar. 0.5005 mm is four dots of a printer with 203 dots to the inch. */
  readonly moduleMm?: number;
  readonly barHeightMm?: number;
}

/** Logistic units: narrowest bar 0.495 to 0.940 mm; whole symbol 165.10 mm; bars 31.75 mm on a label (GS1 General Specifications). */
export const logisticLimits = {
  leastModuleMm: 0.495,
  mostModuleMm: 0.94,
  longestMm: 165.1,
  leastLabelBarMm: 31.75,
  mostCharacters: 48,
} as const;

const linearQuietModules = 10;

/**
 * A GS1-128 symbol of an element string with bracketed identifiers. The encoder checks identifiers, check digits and
 * dates; the two limits that it does not know (48 characters, 165.10 mm) are checked here.
 *
 * @throws {RangeError} outside of `logisticLimits`, or when the encoder refuses the text
 */
export function gs1Linear(bracketed: string, options: LinearOptions = {}): MeasuredSymbol {
  const { moduleMm = 0.5005, barHeightMm = 32 } = options;
  if (moduleMm < logisticLimits.leastModuleMm || moduleMm > logisticLimits.mostModuleMm) {
    throw new RangeError(`a narrowest bar of ${moduleMm} mm is not for logistic units`);
  }
  const characters = bracketed.replaceAll(/\((\d{2,4})\)/g, '$1').length;
  if (characters > logisticLimits.mostCharacters) throw new RangeError(`${characters} characters are too many`);
  const { sbs: widths } = encoded<{ sbs?: readonly number[] }>({ bcid: 'gs1-128', text: bracketed });
  if (widths === undefined) throw new RangeError('the encoder answered no bars');
  return linear(widths, moduleMm, barHeightMm);
}

function linear(widths: readonly number[], moduleMm: number, barHeightMm: number): MeasuredSymbol {
  const quietMm = linearQuietModules * moduleMm;
  const darks: DarkRectangle[] = [];
  let module = 0;
  widths.forEach((width, place) => {
    const isBar = place % 2 === 0;
    const xMm = quietMm + module * moduleMm;
    if (isBar) darks.push({ xMm, yMm: 0, widthMm: width * moduleMm, heightMm: barHeightMm });
    module += width;
  });
  const widthMm = module * moduleMm + 2 * quietMm;
  if (widthMm > logisticLimits.longestMm) throw new RangeError(`a symbol of ${widthMm.toFixed(1)} mm is too long`);
  return { widthMm, heightMm: barHeightMm, quietMm, darks };
}

/** What a symbol of squares is for: it decides the encoder and the quiet zone. */
export type MatrixKind = 'gs1-data-matrix' | 'gs1-qr' | 'link-qr' | 'data-matrix';

const matrixKinds: Readonly<Record<MatrixKind, { readonly encoder: string; readonly quietModules: number }>> = {
  'gs1-data-matrix': { encoder: 'gs1datamatrix', quietModules: 1 },
  'data-matrix': { encoder: 'datamatrix', quietModules: 1 },
  'gs1-qr': { encoder: 'gs1qrcode', quietModules: 4 },
  'link-qr': { encoder: 'qrcode', quietModules: 4 },
};

/**
 * A symbol of squares. `moduleMm` is 0.743 unless given: the least for logistic units (GS1 General Specifications).
 *
 * @throws {RangeError} when the encoder refuses the text
 */
export function matrixSymbol(kind: MatrixKind, text: string, moduleMm = 0.743): MeasuredSymbol {
  const { encoder, quietModules } = matrixKinds[kind];
  const level = encoder.endsWith('qrcode') ? { eclevel: 'M' } : {};
  const { pixs, pixx, pixy } = encoded<{ pixs?: ArrayLike<number>; pixx?: number; pixy?: number }>({
    bcid: encoder,
    text,
    ...level,
  });
  if (pixs === undefined || pixx === undefined || pixy === undefined) {
    throw new RangeError('the encoder answered no squares');
  }
  const quietMm = quietModules * moduleMm;
  const darks = Array.from({ length: pixy }, (_, row) => darksOfRow(pixs, { row, pixx, moduleMm, quietMm })).flat();
  return { widthMm: pixx * moduleMm + 2 * quietMm, heightMm: pixy * moduleMm + 2 * quietMm, quietMm, darks };
}

interface Row {
  readonly row: number;
  readonly pixx: number;
  readonly moduleMm: number;
  readonly quietMm: number;
}

/** Neighbouring dark squares of a row become one rectangle: smaller files, and no hairlines between them. */
function darksOfRow(pixs: ArrayLike<number>, { row, pixx, moduleMm, quietMm }: Row): readonly DarkRectangle[] {
  const darks: DarkRectangle[] = [];
  for (let column = 0; column < pixx; column += 1) {
    const begin = column;
    while (column < pixx && pixs[row * pixx + column] === 1) column += 1;
    const modules = column - begin;
    if (modules === 0) continue;
    darks.push({
      xMm: quietMm + begin * moduleMm,
      yMm: quietMm + row * moduleMm,
      widthMm: modules * moduleMm,
      heightMm: moduleMm,
    });
  }
  return darks;
}

/** The encoder changes the options that it is given: each call gets fresh ones. Its plain errors become ours. */
function encoded<Raw>(options: { bcid: string; text: string; eclevel?: string }): Raw {
  try {
    const [first] = bwip().raw(options as never) as unknown as Raw[];
    if (first === undefined) throw new RangeError('the encoder answered nothing');
    return first;
  } catch (error) {
    if (error instanceof RangeError) throw error;
    throw new RangeError(error instanceof Error ? error.message : String(error), { cause: error });
  }
}
