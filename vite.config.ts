import { readFileSync } from 'node:fs';
import { minifySync, type Plugin } from 'vite';
import { defineConfig } from 'vitest/config';

const kit: { readonly version: string } = JSON.parse(readFileSync(new URL('package.json', import.meta.url), 'utf8'));

export default defineConfig({
  define: { KIT_VERSION: JSON.stringify(kit.version) },
  plugins: [lightPages()],
  // One file with everything in it: a cold start reads no second file. Only fonts are cut by a package of its own, whose
  // WebAssembly is a file beside it (src/node/cut-fonts.ts).
  ssr: { noExternal: true },
  build: {
    ssr: 'src/cli/main.ts',
    outDir: 'dist',
    target: 'node20',
    minify: 'oxc',
    rolldownOptions: {
      output: { format: 'cjs', entryFileNames: 'lessontide.cjs', banner: '#!/usr/bin/env node', codeSplitting: false },
    },
  },
  test: {
    include: ['tests/**/*.test.ts'],
    setupFiles: ['tests/setup.ts'],
    // The machine that checks may be slow and busy; nothing here is timed.
    testTimeout: 60_000,
    hookTimeout: 120_000,
    // Style sheets are part of the pages that tests look at.
    css: true,
    coverage: { provider: 'v8', include: ['src/**/*.ts'], reporter: ['text-summary', 'json-summary'] },
  },
});

/**
 * Puts the styles and scripts of pages into the bundle without their comments and spaces: the sources are written for
 * people to read, and every page of every pack carries them. Tests see the sources; the packs that they build are light.
 */
export function lightPages(): Plugin {
  return {
    name: 'light-pages',
    apply: 'build',
    enforce: 'pre',
    load(id) {
      const [, file = '', kind] = /^(.*\.(css|js))\?raw$/.exec(id) ?? [];
      if (kind === undefined) return undefined;
      this.addWatchFile(file);
      const text = readFileSync(file, 'utf8');
      return `export default ${JSON.stringify(kind === 'css' ? lightenStyles(text) : lightenScript(file, text))};`;
    },
  };
}

/**
 * A style sheet without comments, and with no more space than it needs. Nothing is written in another way: what old
 * browsers understood they understand still.
 */
export function lightenStyles(text: string): string {
  return outsideOfStrings(text, (part) =>
    part
      .replace(/\s+/g, ' ')
      .replace(/ ?([{};,>]) ?/g, '$1')
      .replace(/([{;][\w-]+): /g, '$1:')
      .replaceAll(';}', '}'),
  ).trim();
}

/** Changes what is neither in a string nor in a comment; comments become a space. */
function outsideOfStrings(text: string, change: (part: string) => string): string {
  const strings: string[] = [];
  // A letter that no style sheet has keeps the place of a string.
  const parts = text.replace(/\/\*.*?\*\/|"(?:[^"\\]|\\.)*"|'(?:[^'\\]|\\.)*'/gs, (found) => {
    if (found.startsWith('/*')) return ' ';
    strings.push(found);
    return '\0';
  });
  return change(parts).replaceAll('\0', () => strings.shift() ?? '');
}

/**
 * A script of pages without its words for modules, comments and spaces. Names at its top stay as they are: other scripts
 * of the same page may call them.
 */
function lightenScript(file: string, text: string): string {
  const script = text.replace(/^import .*?;\n+/gms, '').replace(/^export /gm, '');
  const { code, errors } = minifySync(file, script, { module: false, mangle: { toplevel: false } });
  if (errors.length > 0) throw new Error(`${file} cannot be read as a script: ${errors[0]?.message}`);
  return `${code}\n`;
}
