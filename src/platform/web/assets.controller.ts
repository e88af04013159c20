import { Controller, Get, Header, Headers, NotFoundException, Param, Res } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { FastifyReply } from 'fastify';
import { AnyoneMay } from '../actor.js';
import { encodingFor } from './answer-encoding.js';
import { assetAddress, assetVersion, browserFile } from './browser-files.js';

/** What browsers ask with. */
interface AskedWith {
  readonly 'accept-encoding'?: string;
  readonly 'if-none-match'?: string;
}

/** The style sheet and the browser modules: read once, under addresses that hold their version. */
@ApiExcludeController()
@Controller()
export class AssetsController {
  @Get('assets/house.css')
  @AnyoneMay()
  style(@Headers() asked: AskedWith, @Res({ passthrough: true }) reply: FastifyReply): Buffer | null {
    return answerFile(reply, 'house.css', { asked, keep: 'public, max-age=300' });
  }

  @Get('assets/:version/*')
  @AnyoneMay()
  asset(
    @Param() params: { readonly version: string; readonly '*': string },
    @Headers() asked: AskedWith,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Buffer | null {
    // A page that was open while the server was changed still asks by the version before.
    const keep = params.version === assetVersion ? 'public, max-age=31536000, immutable' : 'no-store';
    return answerFile(reply, params['*'], { asked, keep });
  }

  /** The service worker's scope is the whole house, so its address is; what it does stands under the version. */
  @Get('service-worker.js')
  @AnyoneMay()
  @Header('Content-Type', 'text/javascript; charset=utf-8')
  @Header('Cache-Control', 'no-cache')
  @Header('Service-Worker-Allowed', '/')
  serviceWorker(): string {
    return `import '${assetAddress('platform/web/client/service-worker.js')}';\n`;
  }
}

function answerFile(
  reply: FastifyReply,
  path: string,
  { asked, keep }: { readonly asked: AskedWith; readonly keep: string },
): Buffer | null {
  const file = browserFile(path);
  if (file === null) throw new NotFoundException();
  void reply.header('Cache-Control', keep).header('ETag', file.etag).header('Vary', 'Accept-Encoding').type(file.type);
  if (asked['if-none-match'] === file.etag) {
    void reply.status(304);
    return null;
  }
  const encoding = encodingFor(asked['accept-encoding']);
  if (encoding === null) return file.content;
  void reply.header('Content-Encoding', encoding);
  return file.packed(encoding);
}
