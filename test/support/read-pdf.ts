import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import * as mupdf from 'mupdf';
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader';

const wasmFile = createRequire(import.meta.url).resolve('zxing-wasm/reader/zxing_reader.wasm');
prepareZXingModule({ overrides: { wasmBinary: new Uint8Array(readFileSync(wasmFile)).buffer } });

/** A symbol as a reader finds it on a page: its AIM prefix and its data, separators included. */
export interface ReadSymbol {
  readonly prefix: string;
  readonly text: string;
}

/** One page as a picture, as a printer or a camera would see it. */
export function pageAsPng(pdf: Uint8Array, page = 0, dotsPerInch = 300): Uint8Array {
  const document = mupdf.Document.openDocument(pdf, 'application/pdf');
  const scale = dotsPerInch / 72;
  const picture = document
    .loadPage(page)
    .toPixmap(mupdf.Matrix.scale(scale, scale), mupdf.ColorSpace.DeviceGray, false, true);
  return picture.asPNG();
}

export function pageCount(pdf: Uint8Array): number {
  return mupdf.Document.openDocument(pdf, 'application/pdf').countPages();
}

/** Every symbol of every page, read from the rendered picture by a decoder that did not make it. */
export async function symbolsOf(pdf: Uint8Array, dotsPerInch = 300): Promise<readonly ReadSymbol[]> {
  const found: ReadSymbol[] = [];
  for (let page = 0; page < pageCount(pdf); page += 1) {
    const results = await readBarcodes(pageAsPng(pdf, page, dotsPerInch), {
      textMode: 'Plain',
      maxNumberOfSymbols: 255,
      tryHarder: true,
    });
    found.push(...results.map((result) => ({ prefix: result.symbologyIdentifier, text: result.text })));
  }
  return found;
}

/** The words of a PDF, page by page, lines apart by a line end. */
export function textOf(pdf: Uint8Array): string {
  const document = mupdf.Document.openDocument(pdf, 'application/pdf');
  return Array.from({ length: document.countPages() }, (_, page) =>
    document.loadPage(page).toStructuredText('preserve-whitespace').asText(),
  ).join('\n');
}

/** A line that is drawn, not filled. */
export interface DrawnStroke {
  readonly widthMm: number;
  readonly isDashed: boolean;
}

/** Every line of every page, as a renderer that did not make the file would draw it. */
export function strokesOf(pdf: Uint8Array): readonly DrawnStroke[] {
  const document = mupdf.Document.openDocument(pdf, 'application/pdf');
  const found: DrawnStroke[] = [];
  const device = new mupdf.Device({
    strokePath(_path, stroke, [a, b]) {
      const widthMm = (stroke.getLineWidth() * Math.hypot(a, b) * 25.4) / 72;
      found.push({ widthMm, isDashed: (stroke.getDashes() ?? []).length > 0 });
    },
  });
  for (let page = 0; page < document.countPages(); page += 1) {
    document.loadPage(page).run(device, mupdf.Matrix.identity);
  }
  return found;
}
