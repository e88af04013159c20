import { Body, Controller, Param, ParseUUIDPipe, Put } from '@nestjs/common';
import { ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../journal/entry-draft.js';
import { May } from '../platform/actor.js';
import { Asking } from '../platform/web/request.js';
import { CustomerPaperLanguageForm, SitePaperLanguageForm } from './paper-language.form.js';
import { SetPaperLanguage } from './set-paper-language.js';

@ApiTags('plant')
@Controller('api/plant')
export class PaperLanguageApi {
  constructor(private readonly setPaperLanguage: SetPaperLanguage) {}

  @Put('paper-language')
  @May('set-up-plant')
  @ApiOperation({
    summary: 'Labels, handovers and accounts are in this language from now on; customers may have their own',
  })
  ofSite(@Asking() asked: Asked, @Body() form: SitePaperLanguageForm): Promise<{ readonly id: string }> {
    return this.setPaperLanguage.forSite(asked, form);
  }

  @Put('customers/:id/paper-language')
  @May('keep-deliveries')
  @ApiOperation({ summary: 'Papers for a customer are in this language from now on; absent: as the site’s' })
  ofCustomer(
    @Asking() asked: Asked,
    @Param('id', ParseUUIDPipe) id: string,
    @Body() form: CustomerPaperLanguageForm,
  ): Promise<{ readonly id: string }> {
    return this.setPaperLanguage.forCustomer(asked, id, form);
  }
}
