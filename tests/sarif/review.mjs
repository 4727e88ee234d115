// Usage: node review.mjs SEEDED FAULTY FOLDER   What the SARIF logs of two reviews say. Prints `N passed, N failed`.
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';

const [seededLog, faultyLog, folder] = process.argv.slice(2);
let passed = 0;
let failed = 0;
const expect = (name, holds) => {
  holds ? passed++ : failed++;
  if (!holds) console.log(`FAILED ${name}`);
};
const run = (log) => JSON.parse(readFileSync(log, 'utf8')).runs[0];
const uri = (result) => result.locations[0].physicalLocation.artifactLocation.uri;

const seeded = run(seededLog);
const clauses = seeded.results.filter((one) => one.properties?.verdict);
expect('clauses that are not shown', clauses.some((one) => one.properties.verdict === 'not shown'));
// 512.3.11 is optional there; every other clause that is not shown keeps the submittal from passing.
expect('none of them is below error', clauses.every((one) =>
  one.level === (one.ruleId === 'harrow_512/512.3.11' ? 'note' : 'error')));
expect('the place is in the submittal', clauses.every((one) => decodeURIComponent(uri(one)) === '100 % & é.yaml'));
expect('some stand at a line', clauses.some((one) => one.locations[0].physicalLocation.region?.startLine > 1));
expect('the requirement stands beside', clauses.every((one) =>
  one.relatedLocations[0].physicalLocation.artifactLocation.uri === 'harrow_512.plumb'));
// Twelve errors are sown (examples/submittals/seeded.yaml); each is found by the audit.
const audit = seeded.results.filter((one) => one.ruleId.startsWith('audit.'));
expect('findings of the audit', audit.length >= 12 && audit.every((one) => one.level === 'warning'));
expect('each rule stands once', new Set(seeded.tool.driver.rules.map((one) => one.id)).size ===
  seeded.tool.driver.rules.length);
for (const artifact of seeded.artifacts) {
  const file = resolve(folder, decodeURIComponent(artifact.location.uri));
  expect(`digest of ${file}`, createHash('sha256').update(readFileSync(file)).digest('hex') ===
    artifact.hashes['sha-256']);
}

const faulty = run(faultyLog);
expect('the error of the submittal', faulty.results.some((one) =>
  one.ruleId === 'submittal.unknown-key' && one.level === 'error'));
expect('clauses that fail', faulty.results.filter((one) => one.properties?.verdict === 'fails').length >= 5);
expect('the amendment is among the files', faulty.artifacts.some((one) => one.location.uri === 'harrow_sp_14.plumb'));
expect('the outcome', faulty.properties.outcomes[0].outcome === 'Revise and resubmit');
console.log(`${passed} passed, ${failed} failed`);
process.exit(failed === 0 && passed > 0 ? 0 : 1);
