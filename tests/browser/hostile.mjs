// A submittal with something hostile in every text that a report shows, made for the rules of `rules` below. Written here
// and not as a file because the texts hold characters that no editor should have to keep.

export const rules = `plumbrule 1
vocabulary cold "Words of this test <b id=injected>bold</b>"
condition soak "soak" in min
measure loss "abrasion loss <img src=x onerror=document.title=1>" in g/m2 under soak
  method "<script>document.title='run'</script>"
  from before in g, after in g
  computed as (before - after) * 32.9 1/m2
measure sand "sand & 'adhesion'" in g/m2
`;

export const specification = `plumbrule 1
specification limits "Limits </style></title><script>document.title='run'</script>" edition 2026 uses cold
  compare by the absolute method
  agency "' onmouseover='document.title=1 &quot; &#34;"
  source "javascript:document.title=1 <a href=javascript:alert(1)>x</a>"
  status unverified "]]> --> </details></table></body>"
section 1 "</h3><iframe src=//example.invalid>"
requirement 1.1 "Loss <svg onload=document.title=1>" loss under soak 1 h shall be at most 538 g/m2
  because "<object data=x>"
  mend "</li></ol><form action=//example.invalid><input autofocus onfocus=document.title=1>"
  cite "{{title}} [[title]] <%= 1 %>"
requirement 1.2 "Sand" sand shall be at most 538 g/m2
requirement 1.3 "Loss of six days" loss under soak 6 d shall be at most 807 g/m2
`;

const marks = [
  '<script>document.title="run"</script>',
  '</style><style>*{display:none}</style>',
  '"><img src=x onerror=document.title=1>',
  "' onmouseover='document.title=1",
  '</title></head><body onload=document.title=1>',
  '<!-- <![CDATA[ ]]> -->',
  '\\u202Eetirw\\u202C \\u2066isolated\\u2069',
  '\\x01\\x07\\x1b[31mred\\x1b[0m\\x7f\\x9b',
  'https://example.invalid/ @everybody #1 [link](javascript:alert(1)) ![x](//example.invalid/x.png) | `code` *b* _i_',
  'w'.repeat(400),
];
const all = JSON.stringify(marks.join(' ')).replaceAll('\\\\', '\\');

export const submittal = `submittal: 1
project: ${all}
mix: ${all}
laboratory: ${all}
prepared_by: ${all}
date: 2026-03-20
note: ${all}
${'k<b>'.repeat(30)}: 1
results:
  - measure: loss
    under: {soak: 1 h}
    specimens:
      - {before: 801.4 g, after: 760.8 g}
    reported: 474 g/m2
  - {measure: sand, reported: "<i>400</i> ${'x'.repeat(300)}"}
  - {measure: "<u>none</u>", reported: 3}
`;
