// Usage: node look.mjs PAGES CHROMIUM PRINTED [PICTURES]
// PRINTED: fails.html as examples/print_pdf.sh printed it. Opens every page of the folder; prints `N passed, N failed`.
import { readFileSync, readdirSync } from 'node:fs';
import { basename, join } from 'node:path';
import axe from 'axe-core';
import puppeteer from 'puppeteer-core';
import { agree } from './facts.mjs';
import { shown } from './hostile.mjs';
import { numbered, sheets } from './paper.mjs';

const [folder, chromium, printed, pictures] = process.argv.slice(2);
let passed = 0;
let failed = 0;
const expect = (name, holds, detail = '') => {
  holds ? passed++ : failed++;
  if (!holds) console.log(`FAILED ${name}: ${detail}`);
};

const open = async (browser, file, width, scheme = 'light') => {
  const page = await browser.newPage();
  const seen = { errors: [], requests: [] };
  page.on('console', (message) => seen.errors.push(message.text()));
  page.on('pageerror', (error) => seen.errors.push(String(error)));
  page.on('request', (request) => seen.requests.push(request.url()));
  page.on('dialog', (dialog) => (seen.errors.push('dialog'), dialog.dismiss()));
  await page.setViewport({ width, height: 900 });
  await page.emulateMediaFeatures([{ name: 'prefers-color-scheme', value: scheme }]);
  await page.goto(`file://${file}`);
  return { page, seen };
};

// Every element that a page may have, outside of its pictures and in them.
const known = {
  page: 'html head meta title style body a header nav main section footer article h1 h2 h3 h4 p ul ol li dl div dt dd table '
    + 'caption thead tbody tr th td span strong details summary figure figcaption code wbr',
  picture: 'svg title desc text line polyline polygon rect circle',
};

// What a page must never hold, and how it must be built.
const structure = (known) => {
  const levels = [...document.querySelectorAll('h1,h2,h3,h4,h5,h6')].map((one) => Number(one.tagName[1]));
  const all = [...document.querySelectorAll('*')];
  return {
    foreign: all.filter((one) => !known[one.closest('svg') ? 'picture' : 'page'].split(' ').includes(one.tagName.toLowerCase()))
      .map((one) => one.outerHTML.slice(0, 80)),
    handlers: all.flatMap((one) => [...one.attributes].filter((has) => /^on/i.test(has.name) || /javascript:/i.test(has.value) && has.name !== 'content')
      .map((has) => `${one.tagName} ${has.name}`)),
    leads: [...document.querySelectorAll('[href],[src]')].map((one) => one.getAttribute('href') ?? one.getAttribute('src'))
      .filter((to) => !to.startsWith('#')),
    broken: [...document.querySelectorAll('a')].filter((one) => !document.getElementById(one.hash.slice(1))).length,
    styles: document.querySelectorAll('style').length,
    first: levels.filter((one) => one === 1).length,
    skipped: levels.some((one, at) => at > 0 && one > levels[at - 1] + 1),
    captions: [...document.querySelectorAll('table')].every((one) => one.caption?.textContent.trim()),
    scopes: [...document.querySelectorAll('th')].every((one) => one.scope),
    words: [...document.querySelectorAll('.verdict')].every((one) => one.textContent.trim()),
    language: document.documentElement.lang,
    title: document.title,
    text: document.body.textContent.replaceAll('\u00a0', ' '),
    svg: Object.fromEntries(['title', 'desc', 'text'].map((tag) =>
      [tag, [...document.querySelectorAll(`svg ${tag}`)].map((one) => one.textContent)])),
    numbers_first: [...document.querySelectorAll('figure')].every((figure) => {
      const window = [...document.querySelectorAll('dt')].find((one) => one.textContent === 'Window');
      return window && (window.compareDocumentPosition(figure) & Node.DOCUMENT_POSITION_FOLLOWING) !== 0;
    }),
  };
};

const control = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/;

const look = async (browser, file) => {
  const name = basename(file, '.html');
  for (const width of [360, 1280]) {
    for (const scheme of ['light', 'dark']) {
      const { page, seen } = await open(browser, file, width, scheme);
      const label = `${name} ${width} ${scheme}`;
      const wide = await page.evaluate(() => document.documentElement.scrollWidth);
      expect(`${label}: no sideways scroll`, wide <= width, `${wide} px`);
      if (pictures) await page.screenshot({ path: join(pictures, `${label.replaceAll(' ', '_')}.png`), fullPage: true });
      await page.evaluate(() => document.querySelectorAll('details').forEach((one) => (one.open = true)));
      const opened = await page.evaluate(() => document.documentElement.scrollWidth);
      expect(`${label}: no sideways scroll, all open`, opened <= width, `${opened} px`);
      await page.evaluate(axe.source);
      const { violations } = await page.evaluate(() => globalThis.axe.run(document, { resultTypes: ['violations'] }));
      expect(`${label}: can be read by all`, violations.length === 0,
        JSON.stringify(violations.map((one) => [one.id, one.nodes.length, one.nodes[0].html.slice(0, 200), one.nodes[0].failureSummary])));
      expect(`${label}: no console message`, seen.errors.length === 0, seen.errors.join('; '));
      expect(`${label}: loads itself alone`, seen.requests.length === 1, seen.requests.join(' '));
      await page.close();
    }
  }
  const { page } = await open(browser, file, 1280);
  const found = await page.evaluate(structure, known);
  for (const what of ['foreign', 'handlers', 'leads']) {
    expect(`${name}: no ${what}`, found[what].length === 0, found[what].slice(0, 3).join(' '));
  }
  expect(`${name}: styles of its own alone`, found.styles === 2);
  expect(`${name}: links lead somewhere`, found.broken === 0, `${found.broken}`);
  expect(`${name}: one main heading`, found.first === 1);
  expect(`${name}: no heading skips a level`, !found.skipped);
  expect(`${name}: tables have captions and scopes`, found.captions && found.scopes);
  expect(`${name}: each verdict is a word`, found.words);
  expect(`${name}: language`, found.language === 'en');
  expect(`${name}: no control characters`, !control.test(found.text) && !control.test(found.title));
  await keyboard(page, name);
  await page.close();
  return found;
};

// Hostile texts are there, as texts: in the page, in the titles, descriptions and labels of its pictures.
const inert = (name, found) => {
  const { text, svg = {} } = shown[name];
  for (const part of text) expect(`${name}: ${part} is shown as text`, found.text.includes(part));
  for (const [tag, parts] of Object.entries(svg)) {
    for (const part of parts) {
      expect(`${name}: ${part} is text of a picture's ${tag}`, found.svg[tag].some((one) => one.includes(part)), found.svg[tag].join(' | '));
    }
  }
  expect(`${name}: no text ran as a script`, found.title.length > 3 && found.title !== 'run', found.title);
};

const keyboard = async (page, name) => {
  const closed = await page.evaluate(() => {
    const first = document.querySelector('summary');
    first?.focus();
    return first ? first.parentElement.open : null;
  });
  if (closed === null) return;
  const state = () => page.evaluate(() => document.querySelector('details').open);
  await page.keyboard.press('Enter');
  const opened = await state();
  await page.keyboard.press('Space');
  expect(`${name}: opens and closes by keyboard`, closed === false && opened && !(await state()));
  const ring = await page.evaluate(() => getComputedStyle(document.activeElement).outlineStyle);
  expect(`${name}: focus can be seen`, ring !== 'none', ring);
};

const browser = await puppeteer.launch({ executablePath: chromium, args: ['--no-sandbox', '--disable-gpu'] });
try {
  for (const file of readdirSync(folder).filter((one) => one.endsWith('.html')).sort()) {
    const name = basename(file, '.html');
    const found = await look(browser, join(folder, file));
    const { page } = await open(browser, join(folder, file), 1280);
    await sheets(page, name, found, expect, pictures);
    const read = (format) => readFileSync(join(folder, `${name}.${format}`), 'utf8');
    const formats = readdirSync(folder);
    if (formats.includes(`${name}.json`)) {
      const plain = formats.includes(`${name}.markdown`);
      await agree(page, name, JSON.parse(read('json')), plain ? read('markdown') : '', plain ? read('text') : '', expect);
    }
    if (name.startsWith('hostile')) inert(name, found);
    if (name === 'window') expect('window: its numbers stand before its pictures', found.numbers_first);
    await page.close();
  }
  const { sheets: count, wrong } = await numbered(printed);
  expect('print_pdf.sh: sheets numbered by the page itself', count > 1 && wrong === 0, `${wrong} of ${count}`);
} finally {
  await browser.close();
}
console.log(`${passed} passed, ${failed} failed`);
process.exit(failed === 0 && passed > 0 ? 0 : 1);
