// The same nights over an engine whose calls are written down: the benchmark puts it in the engine's place.
export { recording, replay } from './counted-engine.ts';
export { openNights } from './nights-entry.ts';
