import type { KnownDirective } from '../../src/lesson/syntax-scan.ts';

/** The first directives of the kit, as the check of syntax sees them; kept apart from the registry so that it may grow. */
export const KNOWN: readonly KnownDirective[] = [
  { name: 'tonight', forms: ['leaf'] },
  { name: 'night', forms: ['text'] },
  { name: 'month', forms: ['text'] },
  { name: 'sentence', forms: ['text'] },
  { name: 'step', forms: ['container'] },
  { name: 'teacher', forms: ['container'] },
  { name: 'handout', forms: ['container'] },
  { name: 'gesture-sequence', forms: ['leaf'] },
  { name: 'group-quiz', forms: ['container'] },
  { name: 'question', forms: ['leaf'] },
  { name: 'answer', forms: ['leaf'] },
];

export const INLINE_NAMES: readonly string[] = ['night', 'month', 'sentence'];
