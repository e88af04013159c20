import { Controller, Get } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import { May } from '../../platform/actor.js';
import { matrixSymbol } from '../../platform/printing/symbols.js';
import { Looking, type Viewer } from '../../platform/web/request.js';
import { devicePage } from './device.page.js';
import { queuePage } from './queue.page.js';
import { scannerPage, scannerReference } from './scanner.page.js';

/** What somebody sets up or looks up on the device in front of them. */
@ApiExcludeController()
@Controller('device')
export class DevicePagesController {
  @Get()
  @May('read')
  home(@Looking() viewer: Viewer): VNode {
    return devicePage({ viewer });
  }

  @Get('queue')
  @May('read')
  queue(@Looking() viewer: Viewer): VNode {
    return queuePage({ viewer });
  }

  @Get('scanner')
  @May('read')
  scanner(@Looking() viewer: Viewer): VNode {
    return scannerPage({ viewer, symbol: matrixSymbol('data-matrix', scannerReference, 1) });
  }
}
