import type { VNode } from 'preact';
import { say } from '../platform/sentences/sentences.js';

/** What can hurt people at a hopper. The words of local codes and of licensed people go before these. */
export function HopperCautions(): VNode {
  return (
    <p class="caution">
      {say('hopper-caution-bags')} {say('hopper-caution-dust')} {say('hopper-caution-lock-out')}
    </p>
  );
}
