import { pdfLib } from './paper-libraries.js';

/**
 * A paper once more, with COPY, the time and the hash of the first print across each page: what was signed and handed over is
 * the first print alone. The same bytes and time give the same copy.
 */
export async function copyOfPaper(
  bytes: Uint8Array,
  { word, note, at }: { readonly word: string; readonly note: string; readonly at: string },
): Promise<Uint8Array> {
  const { degrees, PDFDocument, rgb, StandardFonts } = pdfLib();
  const pdf = await PDFDocument.load(bytes);
  pdf.setModificationDate(new Date(at));
  const font = await pdf.embedFont(StandardFonts.HelveticaBold);
  for (const page of pdf.getPages()) {
    const { width, height } = page.getSize();
    const size = Math.min(width, height) / 5;
    page.drawText(word, {
      x: width / 2 - (font.widthOfTextAtSize(word, size) / 2) * 0.7,
      y: height / 2 - (font.widthOfTextAtSize(word, size) / 2) * 0.7,
      size,
      font,
      rotate: degrees(45),
      color: rgb(0.45, 0.45, 0.45),
      opacity: 0.35,
    });
    page.drawText(note, { x: 20, y: height - 14, size: 8, font, color: rgb(0, 0, 0) });
  }
  return pdf.save({ useObjectStreams: false });
}
