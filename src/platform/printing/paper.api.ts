import { Controller, Get, Header, Param, ParseUUIDPipe, Res } from '@nestjs/common';
import { ApiOperation, ApiTags } from '@nestjs/swagger';
import type { FastifyReply } from 'fastify';
import { May } from '../actor.js';
import { Papers } from './papers.js';

@ApiTags('papers')
@Controller('papers')
export class PaperApi {
  constructor(private readonly papers: Papers) {}

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
}
