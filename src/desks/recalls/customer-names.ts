import type { ReadFrom } from '../../platform/database/reading.js';
import { customerOf } from '../../plant/plant-facts.js';

/** What customers are called and where they are reached now, by id: names can go, figures stay. */
export type CustomerNames = ReadonlyMap<string, { readonly name: string; readonly telephone: string | null }>;

export async function namesOfCustomers(
  from: ReadFrom,
  customers: readonly { readonly customerId: string }[],
): Promise<CustomerNames> {
  const names = new Map<string, { name: string; telephone: string | null }>();
  for (const { customerId } of customers) {
    const { name, code, telephone } = await customerOf(from, customerId);
    names.set(customerId, { name: name ?? code, telephone });
  }
  return names;
}
