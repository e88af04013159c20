import { Controller, Get, Header, Param, ParseUUIDPipe, Res } from '@nestjs/common';
import { ApiOperation, ApiTags } from '@nestjs/swagger';
import type { FastifyReply } from 'fastify';
import { May } from '../actor.js';
import { Clock } from '../clock.js';
import { say } from '../sentences/sentences.js';
import { copyOfPaper } from './copy-of-paper.js';
import { Papers } from './papers.js';

@ApiTags('papers')
@Controller('papers')
export class PaperApi {
  constructor(
    private readonly papers: Papers,
    private readonly clock: Clock,
  ) {}

  @Get(':id/file')
  @May('read')
  @Header('Cache-Control', 'private, max-age=31536000, immutable')
  @ApiOperation({ summary: 'The PDF of a paper, exactly as it was made' })
  async file(@Param('id', ParseUUIDPipe) id: string, @Res() reply: FastifyReply): Promise<void> {
    const { bytes, sha256, name } = await this.papers.fileOf(id);
    await reply
      .type('application/pdf')
      .header('Content-Disposition', `inline; filename="${name}"`)
      .header('ETag', `"${sha256}"`)
      .send(bytes);
  }

  @Get(':id/copy')
  @May('read')
  @Header('Cache-Control', 'no-store')
  @ApiOperation({ summary: 'The same paper with COPY across each page: a reprint, not the paper that was handed over' })
  async copy(@Param('id', ParseUUIDPipe) id: string, @Res() reply: FastifyReply): Promise<void> {
    const { bytes, sha256, name, language } = await this.papers.fileOf(id);
    const at = this.clock.now();
    const word = say('paper-copy', {}, language);
    const facts = { word, at: at.slice(0, 16).replace('T', ' '), hash: sha256.slice(0, 16) };
    const note = say('paper-copy-note', facts, language);
    await reply
      .type('application/pdf')
      .header('Content-Disposition', `inline; filename="${word}-${name}"`)
      .send(Buffer.from(await copyOfPaper(bytes, { word, note, at })));
  }
}
