// `hopper` still asks for it here.
export { inChunks } from '../platform/database/in-chunks.js';
