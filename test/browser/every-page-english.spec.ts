import { describeEveryPage } from '../support/every-page.js';

describeEveryPage('en');
