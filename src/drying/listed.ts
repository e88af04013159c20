// `hopper` still asks for them here.
export { listed, pageOf } from '../platform/web/listed.js';
