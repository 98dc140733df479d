import type { Diagnostic } from '../../content/diagnostic.ts';
import type { SourceFile } from '../../content/types.ts';
import { LEARNERS_FOLDER } from '../../directives/page-names.ts';
import type { ResolvedWeek } from '../../lesson/model.ts';
import type { PackFile } from '../pack-plan.ts';
import { LEARNERS_PDF_FOLDER } from '../pdf/plan-pdfs.ts';
import { collectSecrets, listCalendarNames } from './collect-secrets.ts';
import type { Unpack } from './file-part.ts';
import type { Leak } from './leak.ts';
import { listPageModels, type PageModel, readModelValues } from './page-model.ts';
import { decodeTextFile } from './read-bytes.ts';
import { type Origin, sayLeak } from './say-leak.ts';
import { type MediaSetting, searchBytes } from './search-bytes.ts';
import { searchDrawing } from './search-drawing.ts';
import { searchPage } from './search-page.ts';
import type { PageSearch } from './searched-page.ts';
import type { Secret } from './secret.ts';
import { createSecretSearch } from './secret-search.ts';
import { splitWords } from './split-words.ts';

/** What the search of a week needs beside the files. */
export interface LeakSetting {
  /** The lesson files as the author wrote them, to name a place in them. */
  readonly sources: readonly SourceFile[];
  /** The week's folder, as messages show it. */
  readonly weekFolder: string;
  readonly unpack: Unpack;
}

/** A file to be searched. */
export interface SearchedFile extends PackFile {
  /**
   * True for a file of a pack on the disk that is as the kit has written it, when it was searched for all; it may be of
   * an older lesson, so that only sentences of the present key are looked for.
   */
  readonly isKept?: boolean;
}

/** Files of one pack to be searched. */
export interface SearchedFiles {
  readonly origin: Origin;
  readonly files: readonly SearchedFile[];
  /** The path of a file as messages show it. */
  showPath(path: string): string;
}

/** Searches the files for learners of packs of one week. */
export interface LeakFinder {
  /** All findings about the files below the learners' folder, in order of the files. Others are passed over. */
  find(searched: SearchedFiles): Diagnostic[];
}

/**
 * Prepares the search of a week's packs: for every answer and all else that only the key and the teacher may have,
 * written in any usual way, in the text, the attributes, comments, scripts and style sheets of pages, in pictures,
 * sounds and archives, in names of files; and for what the order and the shape of things on papers tell. Drum tracks
 * that the kit is about to write are passed over, for they are made of numbers alone; so are PDF files as the kit has
 * made them, for they say what the pages say that are searched, in the same places.
 * It shares no code with what renders the pages.
 */
export function createLeakFinder(week: ResolvedWeek, { sources, weekFolder, unpack }: LeakSetting): LeakFinder {
  const secrets = collectSecrets(week);
  const models = listPageModels(week);
  const shared = {
    secrets,
    weekFolder,
    labels: week.labels,
    names: listCalendarNames(week),
    pages: new Set([...models.keys(), LIST]),
    sources: new Map(sources.map((source) => [source.path, source])),
    tags: new Map(),
  };
  const pictures = listAuthorsPictures(week, models, weekFolder);
  const search = createSecretSearch(secrets);
  const tracks = new Set(week.media.learners.tracks.map(({ name }) => `${LEARNERS_FOLDER}/sound/${name}.wav`));
  return {
    find({ origin, files, showPath }) {
      const whole: PageSearch = { ...shared, search, origin, isKept: false, findings: new Map() };
      // Made when the first of such files comes: a build has none.
      let kept: PageSearch | undefined;
      const chooseSearch = (isKept: boolean): PageSearch => {
        if (!isKept) return whole;
        kept ??= { ...whole, search: createSecretSearch(listWritten(secrets, sources)), isKept, findings: new Map() };
        return kept;
      };
      return files
        .filter(({ path }) => path.startsWith(`${LEARNERS_FOLDER}/`) && !(origin === 'planned' && tracks.has(path)))
        .filter((file) => !isPrint(file))
        .flatMap((file) => {
          const model = models.get(file.path);
          const picture = pictures.get(file.path);
          const text = readText(file);
          const page = chooseSearch(file.isKept === true);
          return [
            ...searchName(file.path, model !== undefined || picture !== undefined, page),
            ...searchFile(file, text, { model, picture, page, unpack }),
          ].map((leak) => placeLeak(leak, text, showPath(file.path)));
        });
    },
  };
}

/** Sentences of the key that an author has written: what the kit computes is told of other nights in older packs too. */
function listWritten(secrets: readonly Secret[], sources: readonly SourceFile[]): Secret[] {
  const texts = sources.map(({ text }) => ` ${splitWords(text).join(' ')} `);
  return secrets.filter(({ kind, telling, words }) => {
    return telling === 'anywhere' && kind !== 'note' && texts.some((text) => text.includes(` ${words.join(' ')} `));
  });
}

function isPrint({ path, isKept }: SearchedFile): boolean {
  return isKept === true && path.startsWith(`${LEARNERS_PDF_FOLDER}/`) && path.endsWith('.pdf');
}

const LIST = `${LEARNERS_FOLDER}/index.html`;

interface AuthorsPicture {
  /** As messages show it. */
  readonly file: string;
  readonly isOnPaper: boolean;
}

/** The author's pictures that learners get, by their paths in the pack. */
function listAuthorsPictures(
  { lessons }: ResolvedWeek,
  models: ReadonlyMap<string, PageModel>,
  weekFolder: string,
): Map<string, AuthorsPicture> {
  const used = lessons.flatMap(({ pictures }) => pictures.filter(({ forLearners }) => forLearners));
  if (used.length === 0) return new Map();
  const papers = [...models.values()].filter(({ kind }) => kind === 'papers').map(readModelValues);
  return new Map(
    used.map(({ name, path }) => [
      `${LEARNERS_FOLDER}/images/${name}`,
      { file: `${weekFolder}/${path}`, isOnPaper: papers.some((values) => values.has(`images/${name}`)) },
    ]),
  );
}

/** A name that the author or the kit gave is on the page that shows it, and is judged there. */
function searchName(path: string, isGiven: boolean, { search, origin }: PageSearch): Leak[] {
  return search
    .findUnseen(path.slice(LEARNERS_FOLDER.length))
    .filter(({ secret }) => secret.telling === 'anywhere' || (!isGiven && secret.telling === 'unseen'))
    .map(({ secret }) => ({ severity: 'error', at: 0, message: sayLeak(secret, 'in the name of the file', origin) }));
}

interface FileSetting {
  readonly model: PageModel | undefined;
  /** The author's own picture, where it is one. */
  readonly picture: AuthorsPicture | undefined;
  readonly page: PageSearch;
  readonly unpack: Unpack;
}

/** @param text The file as text, where it is one. */
function searchFile(
  { path, content }: PackFile,
  text: string | undefined,
  { model, picture, page, unpack }: FileSetting,
): Leak[] {
  if (text !== undefined && PAGE.test(path)) return searchPage(path, text, model, page);
  const setting: MediaSetting = {
    search: page.search,
    unpack,
    maker: picture === undefined ? page.origin : 'picture',
    ...(picture === undefined ? {} : { related: { file: picture.file, line: 1, column: 1 } }),
    mayName: picture === undefined || picture.isOnPaper ? NO_NAMES : page.names,
  };
  if (text !== undefined) return searchDrawing(text, setting);
  return searchBytes(typeof content === 'string' ? new TextEncoder().encode(content) : content, setting);
}

const PAGE = /\.x?html?$/i;
const DRAWING = /\.svg$/i;
const NO_NAMES: ReadonlySet<string> = new Set();

function readText({ path, content }: PackFile): string | undefined {
  if (!PAGE.test(path) && !DRAWING.test(path)) return undefined;
  return typeof content === 'string' ? content : decodeTextFile(content);
}

function placeLeak({ severity, at, message, related }: Leak, text: string | undefined, file: string): Diagnostic {
  const place = text === undefined ? { line: 1, column: at + 1 } : findPlace(text, at);
  return {
    rule: 'learner-leak',
    severity,
    place: { file, ...place },
    message,
    ...(related === undefined ? {} : { related }),
  };
}

function findPlace(text: string, at: number): { readonly line: number; readonly column: number } {
  const before = text.slice(0, at);
  return { line: before.split('\n').length, column: at - before.lastIndexOf('\n') };
}
