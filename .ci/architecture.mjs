// Runs the import rules of .dependency-cruiser.mjs over src and fails when a rule is broken, or when (as happens
// with a compiler that the tool does not understand) it looked at nothing and would call that a success.
import { cruise } from 'dependency-cruiser';
import config from '../.dependency-cruiser.mjs';

const { output } = await cruise(
  ['src'],
  { ...config.options, ruleSet: config, validate: true },
  {
    conditionNames: ['import', 'node', 'default'],
  },
);
const modules = output.modules.filter((module) => module.source.startsWith('src/'));
const arrows = modules.flatMap((module) => module.dependencies).length;

for (const { rule, from, to } of output.summary.violations) {
  const reason = config.forbidden.find((known) => known.name === rule.name)?.comment ?? '';
  console.error(`${rule.name}: ${from} → ${to}\n    ${reason}`);
}
const { error } = output.summary;
console.log(`architecture: ${modules.length} modules, ${arrows} imports, ${error} errors`);
if (modules.length < 10 || arrows < 10) {
  console.error('architecture: hardly any module was seen; the check itself is broken');
  process.exitCode = 1;
} else if (error > 0) {
  process.exitCode = 1;
}
