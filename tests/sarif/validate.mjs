// Usage: node validate.mjs MODULES LOG...   Validates each log against the published SARIF 2.1.0 schema, and shows that
// a log that is broken on purpose is refused. Prints `N passed, N failed`.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';

const [modules, ...logs] = process.argv.slice(2);
const require = createRequire(join(modules, 'x.js'));
const schema = JSON.parse(
  readFileSync(join(modules, 'node_modules/@microsoft/jest-sarif/lib/schemas/sarif-2.1.0-rtm.5.json'), 'utf8'));
const draft4 = String(schema.$schema).includes('draft-04');
const Ajv = draft4 ? require('ajv-draft-04') : require('ajv');
const ajv = new (Ajv.default ?? Ajv)({ strict: false, allErrors: true, unicodeRegExp: false });
const formats = require('ajv-formats');
(formats.default ?? formats)(ajv);
const validate = ajv.compile(schema);

let passed = 0;
let failed = 0;
const expect = (name, holds, detail) => {
  holds ? passed++ : failed++;
  if (!holds) console.log(`FAILED ${name}: ${detail}`);
};
for (const log of logs) {
  const data = JSON.parse(readFileSync(log, 'utf8'));
  expect(log, validate(data), JSON.stringify(validate.errors));
  data.runs[0].results.push({ level: 'catastrophe' });
  expect(`${log}, broken on purpose`, !validate(data), 'accepted');
}
console.log(`${passed} passed, ${failed} failed`);
process.exit(failed === 0 && passed > 0 ? 0 : 1);
