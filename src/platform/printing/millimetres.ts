/** Points of a PDF in a millimetre (72 to the inch of 25.4 mm). */
export const pointsPerMillimetre = 72 / 25.4;

/** Points of a length in millimetres, rounded so that the same length always gives the same text in the file. */
export function points(millimetres: number): number {
  return Number((millimetres * pointsPerMillimetre).toFixed(4));
}

/** Pages upright, in millimetres (ISO 216). */
export const paperSizes = {
  a4: { widthMm: 210, heightMm: 297 },
  a5: { widthMm: 148, heightMm: 210 },
  a6: { widthMm: 105, heightMm: 148 },
  a7: { widthMm: 74, heightMm: 105 },
} as const;
export type PaperSize = keyof typeof paperSizes;
