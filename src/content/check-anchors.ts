import type { PhaseName } from '../calendar/rules.ts';
import type { Diagnostic } from './diagnostic.ts';
import { collect, createFault, type Located } from './faults.ts';
import { PHASES } from './schemas/calendar.ts';
import { describePath, quote } from './wording.ts';
import type { YamlDocument, YamlPath } from './yaml-document.ts';

/** Nights from a phase to the next one, as a rule. */
const QUARTER_NIGHTS = 29.53 / 4;

/** The phase, counted in quarters from the new Moon, that the first night of a month has on the average. */
const OPENING_QUARTER: ReadonlyMap<unknown, number> = new Map([
  ['conjunction', 0],
  ['first-crescent', 2 / QUARTER_NIGHTS],
  ['full-moon', 2],
]);

/** Nights that a name may stand from where its phase falls on the average: true phases stray by two. */
const MOST_NIGHTS_OFF = 4;

/** A night of the list that is tied to a phase. */
interface AnchoredName {
  readonly phase: PhaseName;
  readonly path: YamlPath;
  /** 1-based place in the list of names. */
  readonly number: number;
}

/**
 * Checks that no phase is tied to two names, and warns of a name that stands so far from where its phase falls in the
 * month that names would have to be left out or repeated by the handful.
 */
export function* checkAnchors(document: YamlDocument): Generator<Diagnostic> {
  const nights = [...collect(document.value, ['groups', '*', 'nights', '*'])];
  const first = new Map<PhaseName, YamlPath>();
  for (const anchored of listAnchored(nights)) {
    const { phase, path } = anchored;
    const related = first.get(phase);
    if (related === undefined) first.set(phase, path);
    else yield describeTwice(document, anchored, related);
    const expected = findExpectedNight(document, phase);
    if (expected === undefined || countNightsApart(anchored.number, expected, nights.length) <= MOST_NIGHTS_OFF)
      continue;
    yield describeFar(document, anchored, expected, nights.length);
  }
}

function listAnchored(nights: readonly Located[]): readonly AnchoredName[] {
  return nights.flatMap(({ value, path }, index) => {
    const [anchor] = collect(value, ['anchor']);
    const phase = PHASES.find((each) => each === anchor?.value);
    return phase === undefined ? [] : [{ phase, path: [...path, 'anchor'], number: index + 1 }];
  });
}

/** The night of the month that holds a phase on the average; nothing where the file does not say how months begin. */
function findExpectedNight(document: YamlDocument, phase: PhaseName): number | undefined {
  const [at] = collect(document.value, ['month-begins', 'at']);
  const [offset] = collect(document.value, ['month-begins', 'offset']);
  const opening = OPENING_QUARTER.get(at?.value);
  if (opening === undefined) return undefined;
  const moved = typeof offset?.value === 'number' ? offset.value : 0;
  return Math.floor(countQuarters(opening, phase) * QUARTER_NIGHTS) + 1 - moved;
}

function describeTwice(document: YamlDocument, { phase, path }: AnchoredName, related: YamlPath): Diagnostic {
  const message = `${describePath(path)}: ${quote(phase)} is tied to two nights, first at ${describePath(related)}; keep one of them.`;
  return createFault(document, path, { rule: 'wrong-value', message, found: phase, related });
}

function describeFar(
  document: YamlDocument,
  { phase, path, number }: AnchoredName,
  expected: number,
  count: number,
): Diagnostic {
  const message = `${describePath(path)}: ${quote(phase)} falls about night ${expected} of the month, this is name ${number} of ${count}; tie it to a name nearby.`;
  return createFault(document, path, {
    rule: 'wrong-value',
    severity: 'warning',
    message,
    found: `${number}`,
    expected: `${expected}`,
  });
}

/** Quarters of a lunation from the opening of the month to a phase, 0 to 4. */
function countQuarters(opening: number, phase: PhaseName): number {
  const quarters = PHASES.indexOf(phase) - opening;
  return quarters < 0 ? quarters + 4 : quarters;
}

/** The last names of a list lie next to the first ones. */
function countNightsApart(a: number, b: number, count: number): number {
  const apart = Math.abs(a - b);
  return Math.min(apart, Math.abs(count - apart));
}
