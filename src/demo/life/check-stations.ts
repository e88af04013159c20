/** What is checked at every line of the demo, and how often: invented, as are the test pieces in `set-up`. */
export const checkStations = ['weigher', 'detector', 'sieve', 'seal', 'code'] as const;
export type CheckStation = (typeof checkStations)[number];
