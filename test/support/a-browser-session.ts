import type { Browser, BrowserContext } from 'playwright-core';
import { EnrolDevice } from '../../src/people/enrol-device.js';
import type { TestPerson } from './a-person.js';
import { openContext } from './browser.js';
import { anActor, asking, type TestHouse } from './house.js';

/** A device of the plant, known to the house: its token stands in a cookie. */
export async function anEnrolledTablet(house: TestHouse, siteId: string, code: string): Promise<string> {
  const asked = asking(anActor(siteId, 'administrator'));
  const { token } = await house.get(EnrolDevice).execute(asked, { code, kind: 'shared-tablet' });
  if (token === null) throw new Error('no token');
  return token;
}

/** A browser in which somebody is signed in at this address; on an enrolled device where its token is given. */
export async function signedInBrowser(
  browser: Browser,
  address: string,
  person: TestPerson,
  deviceToken: string | null = null,
): Promise<{ readonly context: BrowserContext; readonly policyReports: string[] }> {
  const { context, policyReports } = await openContext(browser);
  if (deviceToken !== null) {
    await context.addCookies([{ name: 'packthread-device', value: deviceToken, url: address }]);
  }
  await signInByForm(context, address, person);
  return { context, policyReports };
}

/** Signs in as the page does, without a page. */
export async function signInByForm(context: BrowserContext, address: string, person: TestPerson): Promise<void> {
  const form = { proof: 'password', code: person.code, password: person.password, next: '/device' };
  const answer = await context.request.post(`${address}/sign-in`, { form, maxRedirects: 0 });
  if (answer.status() !== 303) throw new Error(`signing in failed: ${answer.status()} ${await answer.text()}`);
}
