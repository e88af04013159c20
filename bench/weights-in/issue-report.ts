import { changing, type Headers } from '../ten-years/sign-in.js';

/** Has the weights of a run written into a report, and its PDF drawn. Milliseconds until it was there. @throws {Error} where it is not */
export async function issueReport(address: string, own: Headers, runId: string): Promise<number> {
  const begun = performance.now();
  const issued = await fetch(`${address}/api/runs/${runId}/weights/report`, {
    method: 'POST',
    headers: changing(own),
    body: '{}',
  });
  if (!issued.ok) throw new Error(`no report: ${issued.status} ${await issued.text()}`);
  const { paperId } = (await issued.json()) as { paperId: string };
  const file = await fetch(`${address}/papers/${paperId}/file`, { headers: own });
  const bytes = Buffer.from(await file.arrayBuffer());
  if (!bytes.subarray(0, 5).equals(Buffer.from('%PDF-'))) throw new Error(`no PDF: ${file.status}`);
  return performance.now() - begun;
}
