import { TextField } from '../platform/web/fields.js';
import type { ShownProof } from './prove-again.js';

/** What a form carries whose sender must prove once more who they are. */
export class ProofForm implements ShownProof {
  @TextField({ optional: true, most: 200, says: 'At a desk or from afar: the password once more' })
  password?: string | null;

  @TextField({ optional: true, most: 60, says: 'On a shared tablet or handheld: the badge as scanned, with the PIN' })
  badge?: string | null;

  @TextField({ optional: true, most: 60, says: 'On a shared tablet or handheld: the PIN, with the badge' })
  pin?: string | null;
}

/** Parts a form from the proof in it: the rest is what a command may see, and what its key stands for. */
export function partProof<Form extends ShownProof>(
  form: Form,
): { readonly proof: ShownProof; readonly rest: Omit<Form, 'password' | 'badge' | 'pin'> } {
  const { password, badge, pin, ...rest } = form;
  return { proof: { password, badge, pin }, rest };
}
