import { canonicalText, sha256, type Canonical } from '../platform/canonical-text.js';
import type { AccountView } from './account-view.js';

/** The account as one text, the same for the same content: what is signed. */
export function textOfAccount(account: AccountView): string {
  // A view holds whole numbers and text only.
  return canonicalText(account as unknown as Canonical);
}

/** An account as it was signed. */
export function accountOfText(text: string): AccountView {
  return JSON.parse(text) as AccountView;
}

/** What a client sends back to say which figures it signs. */
export function hashOfAccount(account: AccountView): string {
  return sha256(textOfAccount(account));
}
