// The same review in HTML, Markdown, text and JSON tells the same verdicts, values, limits, margins and places.

// What the page shows, clause by clause, in the shape of the JSON report.
const shown = () => {
  const text = (one) => (one?.textContent ?? '').replace(/\s+/g, ' ').trim();
  const clauses = [...document.querySelectorAll('article.finding')].map((one) => ({
    clause: text(one.querySelector('.number')),
    verdict: text(one.querySelector('.head .verdict')),
    demand: text(one.querySelector('.demand')),
    comparisons: [...one.querySelectorAll('.face tbody tr')].map((row) => [...row.children].map(text)),
    steps: [...one.querySelectorAll('.steps li')].map(text),
  }));
  const aside = [...document.querySelectorAll('.aside tbody tr')].map((row) => [...row.children].map(text));
  const actions = [...document.querySelectorAll('.action')].map((one) => text(one));
  return { clauses, aside, actions };
};

const one_line = (text) => text.replace(/\s+/g, ' ').trim();
const capital = (text) => text.charAt(0).toUpperCase() + text.slice(1);
const compared = (one) => [one.label, one.value, one.limit, one.verdict === 'not shown' ? one.why : one.margin, one.verdict, one.place];
// Markdown as a reader sees it.
const plain = (text) => text.replace(/\\([!-/:-@[-`{-~])/g, '$1').replaceAll('&lt;', '<').replaceAll('&gt;', '>').replaceAll('&amp;', '&');

const all_of = (data) => data.specifications.flatMap((one) => one.findings);

const html_agrees = (name, seen, data, expect) => {
  const applying = all_of(data).filter((one) => one.verdict !== 'does not apply');
  const wanted = applying.map((one) => ({
    clause: one.clause,
    verdict: one.verdict,
    demand: one_line(capital(one.demand)),
    comparisons: one.comparisons.map((part) => compared(part).map(one_line)),
    steps: one.steps.map((step) => one_line(`${step.text} ${step.place}`)),
  }));
  expect(`${name}: HTML has every clause`, wanted.length > 0 && seen.clauses.length === wanted.length, `${seen.clauses.length} of ${wanted.length}`);
  wanted.forEach((one, at) => {
    const other = seen.clauses[at];
    expect(`${name}: HTML agrees on ${one.clause}`, JSON.stringify(one) === JSON.stringify(other), `\n  ${JSON.stringify(one)}\n  ${JSON.stringify(other)}`);
  });
  const outside = all_of(data).filter((one) => one.verdict === 'does not apply')
    .map((one) => [one.clause, one.title, one.why, one.verdict].map(one_line));
  expect(`${name}: HTML agrees on what does not apply`,
    JSON.stringify(outside) === JSON.stringify(seen.aside.map((row) => row.slice(0, 4))), JSON.stringify(seen.aside));
};

// The stretch of the text from the heading of a clause to the next.
const stretches = (text, heading) => {
  const out = [];
  for (const line of text.split('\n')) {
    if (heading.test(line)) out.push([]);
    else if (/^##? /.test(line) && out.length > 0) out[out.length - 1].ended = true;
    if (out.length > 0 && !out[out.length - 1].ended) out[out.length - 1].push(line);
  }
  return out;
};

const markdown_agrees = (name, markdown, data, expect) => {
  const parts = stretches(markdown, /^#### /);
  const wanted = all_of(data);
  expect(`${name}: Markdown has every clause`, parts.length === wanted.length, `${parts.length} of ${wanted.length}`);
  wanted.forEach((one, at) => {
    const part = parts[at] ?? [''];
    const rows = part.filter((line) => line.startsWith('| ')).slice(2)
      .map((line) => line.slice(1, -1).split(/(?<!\\)\|/).map((cell) => plain(cell).trim()));
    expect(`${name}: Markdown agrees on ${one.clause}`,
      plain(part[0]).startsWith(`#### ${one.clause} ${one.title}: ${one.verdict}`) &&
        JSON.stringify(rows) === JSON.stringify(one.comparisons.map((part) => compared(part).map(one_line))),
      `${part[0]} ${JSON.stringify(rows)}`);
    const text = part.map((line) => plain(line).trim());
    const lost = one.steps.filter((step) => !text.includes(`- ${one_line(step.text)}${step.place ? ` (${step.place})` : ''}`));
    expect(`${name}: Markdown has the derivation of ${one.clause}`, lost.length === 0, JSON.stringify(lost[0]));
  });
};

// Plain text is shorter: of what complies it shows the reason, of what fails or is not shown the places too.
const text_agrees = (name, text, data, expect) => {
  const flat = one_line(text);
  for (const one of all_of(data)) {
    const told = flat.includes(one_line(`${one.clause} ${one.title}: ${one.verdict}`)) && flat.includes(one_line(one.why));
    expect(`${name}: text agrees on ${one.clause}`, told, one.why);
    const open = one.verdict === 'fails' || one.verdict === 'not shown';
    for (const part of one.comparisons.filter((part) => open && part.verdict === one.verdict)) {
      expect(`${name}: text has the place of ${one.clause}`, flat.includes(part.place), part.place);
    }
    expect(`${name}: text has the demand and the note of ${one.clause}`,
      !open || (flat.includes(one_line(one.demand)) && flat.includes(one_line(one.note))), one.demand);
    for (const part of one.comparisons.filter((part) => part.verdict === 'fails' && one.verdict === 'fails')) {
      const line = `${part.value} against ${part.limit}${part.margin ? `, ${part.margin}` : ''}`;
      expect(`${name}: text shows what fails of ${one.clause}`, flat.includes(one_line(line)) && flat.includes(part.place), line);
    }
  }
};

// What must be done next: the same things in the same order.
const actions_agree = (name, seen, markdown, data, expect) => {
  expect(`${name}: HTML has every action`, seen.length === data.actions.length, `${seen.length} of ${data.actions.length}`);
  const told = markdown.split('\n').filter((line) => line.startsWith('1. ')).map(plain);
  data.actions.forEach((one, at) => {
    const parts = [one.what, one.why, one.place, ...one.clauses].map(one_line);
    const there = (text) => parts.every((part) => (text ?? '').toLowerCase().includes(part.toLowerCase()));
    expect(`${name}: HTML agrees on action ${at + 1}`, there(seen[at]), `${seen[at]} / ${parts}`);
    expect(`${name}: Markdown agrees on action ${at + 1}`, !markdown || there(told[at]), `${told[at]} / ${parts}`);
  });
};

export const agree = async (page, name, data, markdown, text, expect) => {
  const seen = await page.evaluate(shown);
  html_agrees(name, seen, data, expect);
  actions_agree(name, seen.actions, markdown, data, expect);
  if (markdown) markdown_agrees(name, markdown, data, expect);
  if (text) text_agrees(name, text, data, expect);
};
