#!/usr/bin/env node
'use strict';

/**
 * Starts the command: dist/lessontide.cjs, which holds all of it, with the machine code of an earlier run where there
 * is some (dist/lessontide.cache, written by make-code-cache.cjs). That saves about a third of a cold build.
 * Without the cache, or with one of another bundle or another Node, the same code runs and starts slower.
 */
const { createHash } = require('node:crypto');
const { readFileSync } = require('node:fs');
const { createRequire, wrap } = require('node:module');
const { dirname, join } = require('node:path');
const { setFlagsFromString } = require('node:v8');
const { Script } = require('node:vm');

/**
 * Bytes of bytecode that a function runs before V8 looks whether to optimise it; its own value is about 66,000. One week
 * ends before most of that work pays: this takes a quarter off its processor time, and a sixth off 200 lessons.
 * Set before the cache is read or made: a cache belongs to its flags. Later engines may not know it and would say so.
 */
if (Number.parseInt(process.versions.node, 10) <= 24) setFlagsFromString('--interrupt-budget=400000');

const BUNDLE = join(__dirname, '../../dist/lessontide.cjs');
const CACHE = join(__dirname, '../../dist/lessontide.cache');
const DIGEST_BYTES = 32;

/** Digest of the bundle: stands before the cache, since V8 itself only compares the length of the source. */
const digestOf = (bytes) => createHash('sha256').update(bytes).digest();

/** Compiles the bundle as `require` would; lines and columns of stack traces are those of the file. */
function compile(bytes, cachedData) {
  const source = bytes.toString().replace(/^#!.*/, '');
  return new Script(wrap(source), { filename: BUNDLE, columnOffset: -wrap('').indexOf('\n'), cachedData });
}

function run(script) {
  const bundle = { exports: {} };
  const call = script.runInThisContext();
  call.call(bundle.exports, bundle.exports, createRequire(BUNDLE), bundle, BUNDLE, dirname(BUNDLE));
}

/** The compiled bundle, if there is a cache that belongs to it and that this Node takes. */
function findCompiled() {
  let bytes;
  let cache;
  try {
    bytes = readFileSync(BUNDLE);
    cache = readFileSync(CACHE);
  } catch {
    return undefined;
  }
  if (!digestOf(bytes).equals(cache.subarray(0, DIGEST_BYTES))) return undefined;
  const script = compile(bytes, cache.subarray(DIGEST_BYTES));
  return script.cachedDataRejected ? undefined : script;
}

if (require.main === module) {
  const script = findCompiled();
  if (script === undefined) require(BUNDLE);
  else run(script);
}

module.exports = { BUNDLE, CACHE, compile, digestOf, run };
