import { createRequire } from 'node:module';
import type * as Fontkit from '@pdf-lib/fontkit';
import type * as Bwip from 'bwip-js/node';
import type * as PdfLib from 'pdf-lib';

const require = createRequire(import.meta.url);

/**
 * What papers and symbols are made with, loaded when the first of them is made: together over ten megabytes that a
 * server carries only where somebody prints.
 */
export const pdfLib = (): typeof PdfLib => require('pdf-lib') as typeof PdfLib;
export const fontkit = (): typeof Fontkit.default => require('@pdf-lib/fontkit') as typeof Fontkit.default;
export const bwip = (): typeof Bwip.default => require('bwip-js/node') as typeof Bwip.default;
