import type { CheckedValues } from '../definition.ts';

/** The marks and the working that an `::answer` or a `::question` gives; what it does not give is absent. */
export function readMarks(values: CheckedValues | undefined): { marks?: number; working?: string } {
  const { marks, working } = values ?? {};
  return {
    ...(typeof marks === 'number' ? { marks } : {}),
    ...(typeof working === 'string' ? { working } : {}),
  };
}
