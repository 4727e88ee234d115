// Made records through a compiled JSON Schema.
// Usage: node validate.mjs FOLDER_WITH_NODE_MODULES MODE RECORDS [SCHEMA]
//   parse   JSON.parse alone
//   first   parse and validate up to the first error: whether a record is valid
//   all     parse and validate to the last error: counts per clause
import { createRequire } from 'node:module';
import { closeSync, openSync, readFileSync, readSync } from 'node:fs';

const [folder, mode, records, schemaFile] = process.argv.slice(2);
const counts = { records: 0, complying: 0, failed: new Array(40).fill(0), notShown: new Array(40).fill(0) };

function compiled() {
  const Ajv2020 = createRequire(`${folder}/`)('ajv/dist/2020.js').default;
  const schema = JSON.parse(readFileSync(schemaFile, 'utf8'));
  const validate = new Ajv2020({ strict: false, allErrors: mode === 'all' }).compile(schema);
  const ofClass = schema.allOf.flatMap((part, at) => (part.if ? [at] : []));
  return { validate, ofClass };
}

// `#/allOf/12/then/properties/...`: the thirteenth clause.
function count(errors, ofClass) {
  for (const { keyword, schemaPath } of errors) {
    const clause = Number(schemaPath.split('/')[2]);
    if (keyword === 'if') continue; // said again of the `then` that did not hold
    if (clause === 40) ofClass.forEach((at) => counts.notShown[at]++);
    else if (keyword === 'required' || keyword === 'type') counts.notShown[clause]++;
    else counts.failed[clause]++;
  }
}

// Whole lines, read in blocks: quicker than the line reader of Node.
function eachLine(path, use) {
  const file = openSync(path);
  const block = Buffer.alloc(1 << 20);
  let kept = 0;
  for (let read; (read = readSync(file, block, kept, block.length - kept)) > 0; ) {
    const end = block.lastIndexOf(10, kept + read - 1) + 1;
    for (const line of block.toString('utf8', 0, end).split('\n')) if (line) use(line);
    block.copy(block, 0, end, kept + read);
    kept = kept + read - end;
  }
  closeSync(file);
}

if (mode === 'parse') {
  eachLine(records, (line) => {
    JSON.parse(line);
    counts.records++;
  });
  console.log(`records\t${counts.records}`);
} else {
  const { validate, ofClass } = compiled();
  eachLine(records, (line) => {
    counts.records++;
    if (validate(JSON.parse(line))) counts.complying++;
    else if (mode === 'all') count(validate.errors, ofClass);
  });
  console.log(`records\t${counts.records}\ncomplying\t${counts.complying}`);
  if (mode === 'all') counts.failed.forEach((n, at) => console.log(`${at + 1}\t${n}\t${counts.notShown[at]}`));
}
