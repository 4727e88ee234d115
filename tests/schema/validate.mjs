// Usage: node validate.mjs MODULES SCHEMA SUBMITTAL...   Compiles grammar/submittal.schema.json in strict mode; each
// SUBMITTAL is valid, what wrong.json and records.json hold as wrong is not. Prints `N passed, N failed`.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const [modules, schemaFile, ...submittals] = process.argv.slice(2);
const require = createRequire(join(modules, 'x.js'));
const Ajv2020 = require('ajv/dist/2020');
const read = (path) => JSON.parse(readFileSync(path, 'utf8'));
const here = dirname(fileURLToPath(import.meta.url));

const ajv = new (Ajv2020.default ?? Ajv2020)({ strict: true, allErrors: true });
const schema = read(schemaFile);
let passed = 0;
let failed = 0;
const expect = (name, holds, detail) => {
  holds ? passed++ : failed++;
  if (!holds) console.log(`FAILED ${name}: ${detail}`);
};

expect('the schema itself', ajv.validateSchema(schema), JSON.stringify(ajv.errors));
const submittal = ajv.compile(schema);
const record = ajv.compile({ $ref: `${schema.$id}#/$defs/record` });
for (const file of submittals) {
  expect(file, submittal(read(file)), JSON.stringify(submittal.errors));
}
for (const one of read(join(here, 'wrong.json'))) {
  expect(`wrong: ${one.why}`, !submittal(one.submittal), 'accepted');
}
const records = read(join(here, 'records.json'));
for (const one of records.right) {
  expect(`record ${Object.keys(one)[0]}`, record(one), JSON.stringify(record.errors));
}
for (const one of records.wrong) {
  expect(`wrong record: ${one.why}`, !record(one.record), 'accepted');
}
console.log(`${passed} passed, ${failed} failed`);
process.exit(failed === 0 && submittals.length > 0 ? 0 : 1);
