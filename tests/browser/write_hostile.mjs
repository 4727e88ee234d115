// Writes the hostile submittal and its rules into the current folder.
import { writeFileSync } from 'node:fs';
import { rules, specification, submittal } from './hostile.mjs';

writeFileSync('cold.plumb', rules);
writeFileSync('limits.plumb', specification);
writeFileSync('hostile.yaml', submittal);
