import { readFileSync } from 'node:fs';
import { defineConfig } from 'vitest/config';

const kit: { readonly version: string } = JSON.parse(readFileSync(new URL('package.json', import.meta.url), 'utf8'));

export default defineConfig({
  define: { KIT_VERSION: JSON.stringify(kit.version) },
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
