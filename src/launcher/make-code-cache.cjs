'use strict';

/**
 * Writes dist/lessontide.cache: builds the demonstration week in a folder of its own, so that what a build calls is
 * compiled, and keeps the machine code. Run by `npm run prepare` after the bundle is made.
 */
const { mkdtempSync, readFileSync, rmSync, writeFileSync } = require('node:fs');
const { tmpdir } = require('node:os');
const { join } = require('node:path');
const { BUNDLE, CACHE, compile, digestOf, run } = require('./lessontide.cjs');

const out = mkdtempSync(join(tmpdir(), 'lessontide-'));
const bytes = readFileSync(BUNDLE);
const script = compile(bytes);

process.on('exit', (status) => {
  rmSync(out, { recursive: true, force: true });
  // Without the cache all works as well; a build that fails is for the tests to find.
  if (status === 0) writeFileSync(CACHE, Buffer.concat([digestOf(bytes), script.createCachedData()]));
});

process.chdir(join(__dirname, '../..'));
process.argv.splice(2, process.argv.length, 'build', '--quiet', '--out', out, 'lessons/round-moon');
run(script);
