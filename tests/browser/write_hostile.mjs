// Writes the hostile submittals and their rules into the current folder.
import { writeFileSync } from 'node:fs';
import { again, specification, submittal, trials, vocabulary } from './hostile.mjs';

writeFileSync('cold.plumb', vocabulary);
writeFileSync('limits.plumb', specification(538));
writeFileSync('tighter.plumb', specification(500));
writeFileSync('hostile.yaml', submittal);
writeFileSync('again.yaml', again);
writeFileSync('trials.yaml', trials);
