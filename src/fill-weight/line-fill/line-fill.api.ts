import { Controller, Get, Inject, Param, ParseUUIDPipe, Query } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { May, type Actor } from '../../platform/actor.js';
import { Clock } from '../../platform/clock.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { Acting } from '../../platform/web/request.js';
import { ofSite } from '../../plant/of-site.js';
import { lineOf } from '../../plant/plant-facts.js';
import { adviseFill, type AdviceOnFormat } from './advise-fill.js';
import { lineFillExample } from './line-fill.examples.js';
import { readLineFill } from './line-fill.js';
import { LineFillQuery } from './line-fill.query.js';

@ApiTags('fill weights')
@Controller('api/lines')
export class LineFillApi {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly clock: Clock,
  ) {}

  @Get(':id/fill')
  @May('read')
  @ApiOperation({
    summary:
      'How a line filled its formats lately, what that gives away, and what to set it to, as a sum with its risk; or what is missing. Law differs by country, and an inspector decides',
  })
  @ApiOkResponse({ schema: { example: lineFillExample } })
  async ofLine(@Acting() actor: Actor, @Param('id', ParseUUIDPipe) id: string, @Query() query: LineFillQuery) {
    const line = ofSite(actor, 'packing-line', await lineOf(this.reader, id));
    const fill = await readLineFill(this.reader, line.id, this.clock.now());
    const formats = adviseFill(fill, query).map(asJson);
    return { lineId: line.id, lineCode: line.code, market: query.market ?? null, period: fill.period, formats };
  }
}

function asJson({ fill, markets, present, variation, known, advised, missing }: AdviceOnFormat) {
  const { formatId, formatCode, nominalMilligrams, packCount, sale, setting, lots } = fill;
  return {
    ...{
      formatId,
      formatCode,
      nominalMilligrams,
      packCount,
      sale,
      markets,
      setting,
      lots,
      present,
      variation,
      ...known,
      missing,
    },
    advised: advised === null ? null : advisedAsJson(advised),
  };
}

/** No money where no price was asked with. */
function advisedAsJson({
  ruleSet,
  asked,
  advice,
  fillerSetpointMilligrams,
  change,
  isPriced,
  currency,
  leftOutMarkets,
}: NonNullable<AdviceOnFormat['advised']>) {
  const { savedKilograms, givenAwayKilograms, savedMoney, givenAwayMoney } = change;
  const money = isPriced
    ? { savedMoney, givenAwayMoney, currency }
    : { savedMoney: null, givenAwayMoney: null, currency: null };
  return {
    ruleSet,
    asked,
    ...advice,
    fillerSetpointMilligrams,
    leftOutMarkets,
    monthlyChange: { savedKilograms, givenAwayKilograms, ...money },
  };
}
