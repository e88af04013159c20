import { readFileSync } from 'node:fs';
import { Controller, Get, Header } from '@nestjs/common';
import { AnyoneMay } from '../actor.js';

const styleSheet = readFileSync(new URL('./house.css', import.meta.url), 'utf8');

/** The one style sheet. It is small and read once. */
@Controller('assets')
export class AssetsController {
  @Get('house.css')
  @AnyoneMay()
  @Header('Content-Type', 'text/css; charset=utf-8')
  @Header('Cache-Control', 'public, max-age=300')
  style(): string {
    return styleSheet;
  }
}
