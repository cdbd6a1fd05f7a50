#!/usr/bin/env node
// Starts the program with the compiled code that the build kept of it: compiling anew takes as long as analysing a
// test of 30 drops. Code kept by another version of Node is refused by the engine, which then compiles as ever.
// CommonJS (package.json beside this file), whose loader is ready sooner than that of ES modules.
const { readFileSync } = require('node:fs');
const { join } = require('node:path');
const { Script } = require('node:vm');

const filename = join(__dirname, '../dist/tirelab.js');
load()(require, filename);

function load() {
  // The build writes ASCII, which is read fastest as what it is.
  const program = new Script(readFileSync(filename, 'latin1'), { filename, cachedData: compiled() });
  return program.runInThisContext();
}

function compiled() {
  try {
    return readFileSync(`${filename}.code`);
  } catch {
    return undefined; // A slower start of the same program.
  }
}
