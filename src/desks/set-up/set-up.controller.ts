import { Controller, Get, Param, Query } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import { May } from '../../platform/actor.js';
import { NotFound } from '../../platform/refusal.js';
import { Looking, type Viewer } from '../../platform/web/request.js';
import { SetUpPages } from './set-up-pages.js';
import { steps } from './set-up-state.js';

/** The first-run path and, ever after, the way to change the plant. */
@ApiExcludeController()
@Controller('set-up')
export class SetUpController {
  constructor(private readonly pages: SetUpPages) {}

  @Get()
  @May('read')
  list(@Looking() viewer: Viewer): Promise<VNode> {
    return this.pages.list(viewer);
  }

  @Get(':step')
  @May('read')
  step(@Looking() viewer: Viewer, @Param('step') asked: string, @Query('change') changing?: string): Promise<VNode> {
    const step = steps.find((one) => one === asked);
    if (step === undefined) throw new NotFound('step', asked);
    return this.pages.step(viewer, step, { changing: changing ?? null });
  }
}
