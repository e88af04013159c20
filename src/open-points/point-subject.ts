/** Where a thing is looked at: machines on the plant's page, units on their thread. */
const pageOf: Readonly<Record<string, (id: string) => string>> = {
  scale: () => '/plant',
  coder: () => '/plant',
  hopper: () => '/hoppers',
  'hopper-period': (id) => `/hopper-periods/${id}`,
  'held-unit': (id) => `/holds/${id.split('.')[0] ?? ''}`,
  complaint: (id) => `/quality/complaints/${id}`,
  hold: (id) => `/holds/${id}`,
  'kept-entry': (id) => `/kept-entries/${id}`,
  account: (id) => `/accounts/${id}`,
  'check-plan': (id) => `/checks/plans/${id}`,
  'packing-line': (id) => `/line/${id}`,
  'weigher-silence': (id) => `/weigher-silences/${id}`,
  'line-check': (id) => `/checks/${id}`,
  'pack-weigher': (id) => `/set-up/pack-weighers/${id}`,
  'weight-messages': () => '/set-up/pack-weighers',
  pallet: (id) => `/thread?code=${id}`,
  lot: (id) => `/lots/${id}`,
  'bulk-bag': (id) => `/thread?code=${id}`,
  'packing-run': (id) => `/thread?code=${id}`,
  delivery: (id) => `/thread?code=${id}`,
};

/** The page of the thing that a point is about; null where it has none. */
export function pageOfSubject(kind: string, id: string): string | null {
  return pageOf[kind]?.(id) ?? null;
}
