import type { PDFDocument } from 'pdf-lib';
import type { Instant } from '../clock.js';
import { languageNow, type Language } from '../sentences/language.js';
import { paperSizes, points, type PaperSize } from './millimetres.js';
import { embedFonts, type PaperFonts } from './paper-fonts.js';
import { pdfLib } from './paper-libraries.js';
import { PdfSheet } from './pdf-sheet.js';

/**
 * A paper in the making. The same calls give the same bytes: no time but `issuedAt`, no random ids, fonts cut down in
 * the order in which letters were used.
 */
export class PdfKit {
  readonly sheets: PdfSheet[] = [];

  private constructor(
    private readonly document: PDFDocument,
    readonly fonts: PaperFonts,
  ) {}

  static async begin(title: string, issuedAt: Instant, language: Language = languageNow()): Promise<PdfKit> {
    const document = await pdfLib().PDFDocument.create({ updateMetadata: false });
    document.setTitle(title, { showInWindowTitleBar: true });
    document.setLanguage(language);
    document.setCreator('Packthread');
    document.setProducer('Packthread');
    document.setCreationDate(new Date(issuedAt));
    document.setModificationDate(new Date(issuedAt));
    return new PdfKit(document, await embedFonts(document));
  }

  /** A new page, upright; measured in millimetres from its left upper corner. */
  addSheet(size: PaperSize): PdfSheet {
    const { widthMm, heightMm } = paperSizes[size];
    const page = this.document.addPage([points(widthMm), points(heightMm)]);
    const sheet = new PdfSheet(page, this.fonts, widthMm, heightMm);
    this.sheets.push(sheet);
    return sheet;
  }

  /** The finished file. */
  async bytes(): Promise<Uint8Array> {
    return this.document.save({ useObjectStreams: false, updateFieldAppearances: false });
  }
}
