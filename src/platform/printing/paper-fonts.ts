import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { PDFDocument, PDFFont } from 'pdf-lib';
import { fontkit } from './paper-libraries.js';
import { unpackWoff } from './unpack-woff.js';

/** The two faces of every paper: DejaVu Sans (free licence), which knows Latin, Greek and Cyrillic letters. */
export interface PaperFonts {
  readonly plain: PDFFont;
  readonly bold: PDFFont;
}

const files = { plain: 'dejavu-sans-latin-400-normal.woff', bold: 'dejavu-sans-latin-700-normal.woff' } as const;

type Face = ReturnType<ReturnType<typeof fontkit>['create']>;

/** Each face is read and taken apart once in the process; every paper takes its own cut of it. */
const faces = new Map<string, Face>();

/** Embeds both faces, each with no more letters than the paper uses. No ligatures: copied text stays plain letters. */
export async function embedFonts(document: PDFDocument): Promise<PaperFonts> {
  const embed = (file: string): Promise<PDFFont> => {
    document.registerFontkit({ create: () => faceOf(file) });
    return document.embedFont(new Uint8Array(), { subset: true, features: { liga: false } });
  };
  return { plain: await embed(files.plain), bold: await embed(files.bold) };
}

function faceOf(file: string): Face {
  const known = faces.get(file);
  if (known !== undefined) return known;
  const path = createRequire(import.meta.url).resolve(`@fontsource/dejavu-sans/files/${file}`);
  const face = fontkit().create(unpackWoff(readFileSync(path)));
  faces.set(file, face);
  return face;
}
