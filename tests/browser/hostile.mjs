// Submittals with something hostile in every text that a report shows, made for the rules of `vocabulary` below: markup,
// script, quotes, entities, control characters, turned writing, very long words, signs beyond the basic plane. Written
// here and not as files because the texts hold characters that no editor should have to keep. Everything is invented.

export const vocabulary = `plumbrule 1
vocabulary cold "Words of this test <b id=injected>bold</b>"
basis dry "<i>dry</i> &amp; weighed"
condition soak "soak" in min
condition cure "cure </text><script>document.title='run'</script>" in min
measure loss "loss <img src=x onerror=document.title=1>" in g/m2 under soak
  method "<script>document.title='run'</script>"
  from before in g, after in g
  computed as (before - after) * 32.9 1/m2
measure sand "sand & 'adhesion'" in g/m2
measure torque "torque </desc></svg><iframe src=//example.invalid>" in kg-cm under cure
measure binder "binder </title><b onclick=document.title=1>" in % of dry
`;

export const specification = (most) => `plumbrule 1
specification limits "Limits </style></title><script>document.title='run'</script>" edition 2026 uses cold
  compare by the rounding method, ties to even
  agency "' onmouseover='document.title=1 &quot; &#34;"
  source "javascript:document.title=1 <a href=javascript:alert(1)>x</a>"
  status unverified "]]> --> </details></table></body>"
section 1 "</h3><iframe src=//example.invalid>"
requirement 1.1 "Loss <svg onload=document.title=1>" loss under soak 1 h shall be at most ${most} g/m2
  because "<object data=x>"
  mend "</li></ol><form action=//example.invalid><input autofocus onfocus=document.title=1>"
  cite "{{title}} [[title]] <%= ${most} %>"
requirement 1.2 "Sand" sand shall be at most 538 g/m2
requirement 1.3 "Loss of six days" loss under soak 6 d shall be at most 807 g/m2
requirement 1.4 "Set <math><mtext>" torque under cure 30 min shall be at least 12 kg-cm
  because "<base href=//example.invalid>"
`;

const marks = [
  '<script>document.title="run"</script>',
  '</style><style>*{display:none}</style>',
  '"><img src=x onerror=document.title=1>',
  "' onmouseover='document.title=1",
  '</title></head><body onload=document.title=1>',
  '</text></svg><foreignObject><a href=javascript:alert(1)>x</a></foreignObject>',
  '&lt;b&gt; &amp;amp; &#60;b&#62;',
  '<!-- <![CDATA[ ]]> -->',
  '\\u202Eetirw\\u202C \\u2066isolated\\u2069 \\u05d0\\u05d1\\u05d2',
  '\\x01\\x07\\x1b[31mred\\x1b[0m\\x7f\\x9b',
  '\\U0001F477\\U0001F3FD\\u200D\\u2640\\uFE0F \\U0001F6E3',
  'https://example.invalid/ @everybody #1 [link](javascript:alert(1)) ![x](//example.invalid/x.png) | `code` *b* _i_',
  'w'.repeat(400),
];
const quoted = (text) => JSON.stringify(text).replaceAll('\\\\', '\\');
const all = (which) => quoted(`${which} ${marks.join(' ')}`);

const head = (which, date) => `submittal: 1
project: ${all(`project ${which}`)}
mix: ${all(`mix ${which}`)}
laboratory: ${all(`laboratory ${which}`)}
prepared_by: ${all(`by ${which}`)}
date: ${date}
note: ${all(`note ${which}`)}
${'k<b>'.repeat(30)}: 1
job_mix: {binder: 7.5 % of dry}
`;

const label = (number) => quoted(`<b>${number}</b> ${marks[1]} ${'l'.repeat(60)}`);
const losses = (first, second) => `    specimens:
      - {label: ${label(1)}, before: 801.4 g, after: ${first} g}
      - {label: ${label(2)}, before: 801.4 g, after: ${second} g}
`;
const set = (at30) => `  - measure: torque
    series:
      - {cure: 20 min, value: 8 kg-cm}
      - {cure: 30 min, value: ${at30} kg-cm}
      - {cure: 60 min, value: 21 kg-cm}
`;

const results = (one) => `results:
  - measure: loss
    under: {soak: 1 h}
${losses(...one.after)}    reported: 474 g/m2
  - {measure: sand, reported: "${one.sand}"}
  - {measure: loss, under: {soak: ${one.soak}}, reported: 700 g/m2}
  - {measure: "${one.unknown}", reported: 3}
${one.trial ?? ''}${set(one.at30)}`;

export const submittal = head('before', '2026-03-20') + results({ after: [780.8, 783.9], soak: '6 d', at30: 11,
  sand: `<i>400</i> ${'x'.repeat(300)}`, unknown: '<u>none</u>',
  trial: '  - {measure: sand, at: {binder: 8.5 % of dry}, reported: 650 g/m2}\n' });

// The same mix again: readings altered, a result moved to another soak, one taken away, another value that cannot be
// read, other names.
export const again = head('now', '2026-04-20') + results({ after: [790.8, 793.9], soak: '5 d', at30: 13,
  sand: `<s>410</s> ${'y'.repeat(300)}`, unknown: '<s>none</s>' });

const trial = (at, after, sand) => `  - measure: loss
    under: {soak: 1 h}
    at: {binder: ${at} % of dry}
${losses(after, after + 0.2)}  - {measure: sand, at: {binder: ${at} % of dry}, reported: ${sand} g/m2}
`;

// Tested at several contents, so that there are windows, their pictures and their tables.
export const trials = `${head('trials', '2026-03-20')}results:
${trial(6.5, 780.8, 340)}${trial(7.0, 783.9, 406)}${trial(7.5, 787.1, 480)}${trial(8.5, 791.3, 650)}${set(13)}`;

const attributes = "' onmouseover='document.title=1 &quot; &#34;";  // of the specification
const plain = marks.filter((one) => !one.includes('\\')).slice(0, -1);
const turned = '\ufffdetirw\ufffd';

// What each page must show as text, in its elements and in those of its pictures.
export const shown = {
  hostile: { text: [...plain, turned, attributes, '<object data=x>', '"<u>none</u>"'.slice(1, -1), '<i>400</i>'],
    svg: { text: ['1.1 Loss <svg', '1.4  Set <math><mtext>', 'loss <img src=x onerror=document.title=1>'] } },
  hostile_matrix: { text: [...plain, turned, 'loss <img src=x onerror=document.title=1>'], svg: { text: ['<img'] } },
  hostile_window: {
    text: [...plain, turned, attributes, 'binder </title><b onclick=document.title=1>', '<base href=//example.invalid>'],
    svg: {
      title: ['binder </title><b onclick=document.title=1>', 'torque </desc></svg><iframe src=//example.invalid>'],
      desc: ['loss <img src=x onerror=document.title=1>', 'torque </desc></svg><iframe src=//example.invalid>'],
      text: ['loss <img src=x onerror=document.title=1>', 'binder </title><b onclick=document.title=1>', "sand & 'adhesion'",
        'torque </desc></svg><iframe src=//example.invalid>'],
    },
  },
  hostile_followup: { text: [...plain, turned, 'project before <script>', 'project now <script>', '<b>1</b>', '<s>410</s>',
    '<u>none</u>', '<s>none</s>'] },
  hostile_contrast: { text: [attributes, '<%= 538 %>', '<%= 500 %>', ']]> --> </details></table></body>',
    'loss <img src=x onerror=document.title=1>'] },
};
