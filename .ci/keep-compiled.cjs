// Runs the built program once on the demo and keeps what the engine compiled, for bin/tirelab.js to start with:
//   node .ci/keep-compiled.cjs PROGRAM   writes PROGRAM.code
// In a process of its own, since the program reads its words from the process and ends with it.
const { readFileSync, writeFileSync } = require('node:fs');
const { join } = require('node:path');
const v8 = require('node:v8');
const { Script } = require('node:vm');

const [filename] = process.argv.splice(2);
process.argv.push('analyze', join(__dirname, '../fixtures/demo/run.yaml'));
process.stdout.write = () => true;
// The engine takes kept code only under the flags that it was kept under, and the program sets some for large logs.
v8.setFlagsFromString = () => {};

const program = new Script(readFileSync(filename, 'latin1'), { filename });
program.runInThisContext()(require, filename);
process.on('exit', (status) => {
  if (status === 0) writeFileSync(`${filename}.code`, program.createCachedData());
});
