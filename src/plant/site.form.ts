import { TextField, WholeField } from '../platform/web/fields.js';
import { codeForm, codePattern } from './code-patterns.js';

export class AddSiteForm {
  @TextField({ most: 20, pattern: codePattern, form: codeForm, example: 'AQ' })
  code!: string;

  @TextField({ most: 60, example: 'Alder Quay' })
  name!: string;

  @TextField({ most: 60, example: 'Europe/Berlin', says: 'IANA name of the time zone' })
  timeZone!: string;

  @TextField({
    pattern: /^([01]\d|2[0-3]):[0-5]\d$/,
    form: 'clock-time',
    example: '06:00',
    says: 'When the production day starts, on the clock of the plant',
  })
  productionDayStart!: string;

  @TextField({ most: 13, example: '9520123000011', says: 'GLN of the site, 13 digits' })
  gln!: string;

  @TextField({ most: 12, example: '9520123', says: 'GS1 company prefix, 4 to 12 digits' })
  companyPrefix!: string;

  @WholeField({ most: 9, example: 0, says: 'First digit of every SSCC' })
  ssccExtensionDigit!: number;
}

export class ChangeSiteForm {
  @TextField({ most: 60, example: 'Alder Quay' })
  name!: string;

  @TextField({ most: 60, example: 'Europe/Berlin', says: 'IANA name of the time zone' })
  timeZone!: string;

  @TextField({
    pattern: /^([01]\d|2[0-3]):[0-5]\d$/,
    form: 'clock-time',
    example: '06:00',
    says: 'When the production day starts, on the clock of the plant',
  })
  productionDayStart!: string;

  @TextField({ most: 13, example: '9520123000011', says: 'GLN of the site, 13 digits' })
  gln!: string;

  @TextField({ most: 12, example: '9520123', says: 'GS1 company prefix, 4 to 12 digits' })
  companyPrefix!: string;

  @WholeField({ most: 9, example: 0, says: 'First digit of every SSCC' })
  ssccExtensionDigit!: number;
}
