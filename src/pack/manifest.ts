import { LEARNERS_FOLDER } from '../directives/page-names.ts';
import type { ResolvedWeek } from '../lesson/model.ts';
import schema from './pack.schema.json?raw';
import type { PackFile, Sha256 } from './pack-plan.ts';

declare const KIT_VERSION: string;

/** Name of the manifest; it also tells that a folder is a pack. */
export const MANIFEST_PATH = 'pack.json';

const SCHEMA_PATH = 'pack.schema.json';

/** The JSON Schema of the manifest, which goes with every pack: whoever gets one can check it, with no network. */
export const MANIFEST_SCHEMA: PackFile = { path: SCHEMA_PATH, content: schema };

/** What `pack.json` says; described for others in `pack.schema.json`. The order of keys is the order in the file. */
export interface Manifest {
  readonly $schema: typeof SCHEMA_PATH;
  readonly format: 'lessontide-pack';
  readonly formatVersion: 1;
  readonly madeWith: string;
  readonly title: string;
  readonly for: string;
  readonly language: string;
  readonly school: string;
  readonly calendar: {
    readonly title: string;
    readonly language: string;
    readonly keeper: string;
    readonly sharing: 'open' | 'school';
  };
  readonly lessons: readonly { readonly title: string; readonly date: string; readonly page: string }[];
  /** Every other file of the pack. `learner` files hold no answers. */
  readonly files: readonly {
    readonly path: string;
    readonly for: 'teacher' | 'learner';
    readonly bytes: number;
    readonly sha256: string;
  }[];
}

/** The manifest of a pack as a file. It holds no time of making: the same week gives the same bytes. */
export function planManifest(week: ResolvedWeek, files: readonly PackFile[], sha256: Sha256): PackFile {
  const { plan, school, calendar, labels, lessons } = week;
  const manifest: Manifest = {
    $schema: SCHEMA_PATH,
    format: 'lessontide-pack',
    formatVersion: 1,
    madeWith: `lessontide ${KIT_VERSION}`,
    title: plan.title,
    for: plan.for,
    language: labels.language,
    school: school.name,
    calendar: {
      title: calendar.title,
      language: calendar.language,
      keeper: calendar.keeper,
      sharing: calendar.sharing,
    },
    lessons: lessons.map(({ head, stem, tonight }) => ({
      title: head.title,
      date: tonight.date,
      page: `${stem}.html`,
    })),
    files: files.map(({ path, content }) => ({
      path,
      for: path.startsWith(`${LEARNERS_FOLDER}/`) ? 'learner' : 'teacher',
      bytes: typeof content === 'string' ? computeUtf8Length(content) : content.length,
      sha256: sha256.hex(content),
    })),
  };
  return { path: MANIFEST_PATH, content: `${JSON.stringify(manifest, null, 2)}\n` };
}

function computeUtf8Length(text: string): number {
  return new TextEncoder().encode(text).length;
}
