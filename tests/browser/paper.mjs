// The page on paper: sheets counted and numbered, derivations printed although they are closed on screen, no heading
// left alone at the foot of a sheet.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

// So many sheets the examples take, with room for the fonts of another machine.
const expected = {
  complies: [10, 15],
  fails: [10, 15],
  incomplete: [9, 14],
  seeded: [12, 18],
  agencies: [29, 41],
  matrix: [13, 20],
  twelve: [10, 16],
  several: [5, 8],
  window: [4, 6],
  contrast: [2, 3],
  contrast_agencies: [3, 5],
  recite: [2, 3],
  recite_large: [3, 6],
  followup: [9, 15],
  hostile: [6, 10],
  hostile_matrix: [3, 6],
  hostile_window: [5, 9],
  hostile_followup: [10, 18],
  hostile_contrast: [1, 2],
};

const squeezed = (text) => text.replace(/\s+/g, '');

const read = async (data) => {
  const document = await getDocument({ data: new Uint8Array(data), useSystemFonts: true, verbosity: 0 }).promise;
  const out = [];
  for (let at = 1; at <= document.numPages; ++at) {
    const { items } = await (await document.getPage(at)).getTextContent();
    out.push(items.map((one) => one.str).join(' '));
  }
  return out;
};

export const sheets = async (page, name, found, expect, pictures) => {
  const steps = await page.evaluate(() => [...document.querySelectorAll('.steps li')].map((one) => one.textContent));
  const titles = await page.evaluate(() => [...document.querySelectorAll('h2,h3,.head')].map((one) => one.textContent));
  for (const format of ['A4', 'Letter']) {
    const data = await page.pdf({ format, preferCSSPageSize: false });
    if (pictures) writeFileSync(join(pictures, `${name}_${format}.pdf`), data);
    const pages = (await read(data)).map(squeezed);
    const [least, most] = expected[name] ?? [0, 0];  // a page that is not listed fails
    expect(`${name} on ${format}: sheets`, pages.length >= least && pages.length <= most, `${pages.length}`);
    expect(`${name} on ${format}: numbered`,
      pages.every((text, at) => text.includes(`Page${at + 1}of${pages.length}`)), pages[0].slice(-60));
    if (name.startsWith('hostile')) continue;  // replacement marks and long words are set in other ways
    const whole = pages.map((text, at) => text.replace(`Page${at + 1}of${pages.length}`, '')).join('');
    const lost = steps.filter((one) => !whole.includes(squeezed(one)));
    expect(`${name} on ${format}: derivations are printed`, lost.length <= steps.length / 20,
      `${lost.length} of ${steps.length}: ${lost[0]}`);
    const alone = titles.filter((one) => pages.some((text, at) =>
      text.replace(`Page${at + 1}of${pages.length}`, '').endsWith(squeezed(one))));
    expect(`${name} on ${format}: no heading alone at the foot`, alone.length === 0, alone.join(' | '));
  }
};

// A PDF that was printed already: its sheets, and how many do not carry their number.
export const numbered = async (file) => {
  const pages = (await read(readFileSync(file))).map(squeezed);
  return { sheets: pages.length, wrong: pages.filter((text, at) => !text.includes(`Page${at + 1}of${pages.length}`)).length };
};
