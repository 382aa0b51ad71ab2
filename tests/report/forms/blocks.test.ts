/** One document with every kind of block, in the forms that have all of them. */
import { describe, expect, it } from 'vitest';
import { type Block, heading, line, list, paragraph, table, terms } from '../../../src/report/blocks.ts';
import { asHtml } from '../../../src/report/forms/html.ts';
import { asMarkdown } from '../../../src/report/forms/markdown.ts';
import { asText } from '../../../src/report/forms/text.ts';

const nasty = 'a*b <i> \u001b[2J|';

const DOCUMENT: Block[] = [
  heading(1, 'Title'),
  paragraph(['read ', { strong: 'this' }, ': ', { blank: true }], { close: true, name: 'first' }),
  heading(2, 'Cable', { runIn: true }),
  paragraph('By the metre.'),
  heading(2, 'Question', { number: 1, plain: 'A question' }),
  paragraph('because', { label: 'No:', tone: 'no', indent: 3 }),
  line('file.yaml:3', { label: 'FAULT', tone: 'fault' }),
  { kind: 'extract', text: 'a:\n  b', indent: 2 },
  list('dash', ['one', { text: 'two', more: ['more', { dash: 'case' }] }], { close: true }),
  list('number', ['step']),
  list('box', [{ text: 'tick', number: 4, more: [{ dash: 'case' }] }], { loose: true }),
  list('goods', [{ text: '2 x relay', more: ['K1, K2'], name: 'good' }]),
  list('alert', ['wrong']),
  list('indent', ['aside'], { close: true }),
  list('dash', []),
  terms(6, [
    { term: 'why', text: 'so' },
    { term: '', text: 'and so' },
  ]),
  { kind: 'frame', blocks: [paragraph('Stop when'), list('dash', ['smoke'], { close: true })] },
  table(
    [nasty],
    [
      { head: 'what', of: (text) => ({ text, head: true }) },
      { head: 'at', of: () => ({ text: 'K1.A1', terminal: true, data: { cell: 'at' } }) },
      { head: '', of: () => ({ box: 'tick' }) },
    ],
    { name: 'things', id: 't', scrolls: 'Things' },
    () => ({ below: ['under'], data: { of: nasty } }),
  ),
  table([], [{ head: 'empty', of: () => '' }]),
];

describe('every block', () => {
  it('is text', () => {
    expect(asText(DOCUMENT, { width: 60 })).toBe(`Title
read this: ________

Cable. By the metre.

1. A question
   No: because

FAULT file.yaml:3

  a:
    b
- one
- two
  more
  - case

1. step

[ ] 4. tick
      - case

2 x relay
    K1, K2

! wrong
  aside

why   so
      and so

Stop when
- smoke

what                at
a*b <i> \\u001b[2J|  K1.A1  [ ]
`);
  });

  it('is Markdown', () => {
    expect(asMarkdown(DOCUMENT)).toBe(`# Title

read **this**: \\_\\_\\_\\_

## Cable

By the metre.

## 1. Question

**No:** because

**FAULT** file.yaml:3

    a:
      b

- one
- two
  - more
  - case

1. step

- [ ] **4** tick
  - case

- [ ] 2 x relay
  - K1, K2

- wrong

- aside

- **why** so
  - and so

Stop when

- smoke

| what | at |  |
| --- | --- | --- |
| a\\*b &lt;i\\> \\\\u001b\\[2J\\| | K1.A1 | ☐ |
`);
  });

  it('is HTML', () => {
    const cells = '<th scope="row">a*b &lt;i&gt; \\u001b[2J|</th><td data-cell="at">K1.<wbr>A1</td>';
    expect(asHtml(DOCUMENT, 1)).toBe(`<h2>Title</h2>
<p class="first">read <b>this</b>: <span class="blank"></span></p>
<h3>Cable</h3>
<p>By the metre.</p>
<h3>1. Question</h3>
<p><b>No:</b> because</p>
<p><b>FAULT</b> file.yaml:3</p>
<pre>a:
  b</pre>
<ul><li>one</li><li>two<br>more<br>case</li></ul>
<ol><li>step</li></ol>
<ul><li>tick<br>case</li></ul>
<ul><li class="good">2 x relay<br>K1, K2</li></ul>
<ul><li>wrong</li></ul>
<ul><li>aside</li></ul>
<dl><dt>why</dt><dd>so</dd><dd>and so</dd></dl>
<div class="frame"><p>Stop when</p>
<ul><li>smoke</li></ul></div>
<div class="scroll" role="region" aria-label="Things" tabindex="0"><table class="things" id="t"><thead><tr><th scope="col">what</th><th scope="col">at</th><th scope="col"></th></tr></thead><tbody><tr data-of="a*b &lt;i&gt; \\u001b[2J|">${cells}<td class="tick"><span></span></td></tr><tr class="wrong"><td></td><td colspan="2">under</td></tr></tbody></table></div>`);
  });
});

describe('colour', () => {
  it('is on the words that say the same, and changes no line', () => {
    const coloured = asText(DOCUMENT, { width: 60, colour: true });
    expect(coloured).toContain('   \u001b[1m\u001b[31mNo:\u001b[39m\u001b[22m because');
    // biome-ignore lint/suspicious/noControlCharactersInRegex: colours are what is taken away
    expect(coloured.replace(/\u001b\[\d+m/g, '')).toBe(asText(DOCUMENT, { width: 60 }));
  });
});

describe('what a form does not have', () => {
  it('is left out', () => {
    const blocks = [paragraph('a', { only: ['text'] }), paragraph('b', { only: ['markdown', 'html'] })];
    expect(asText(blocks, { width: 60 })).toBe('a\n');
    expect(asMarkdown(blocks)).toBe('b\n');
    expect(asHtml(blocks)).toBe('<p>b</p>');
  });
});

describe('a table in groups', () => {
  const made = (above: readonly (string | undefined)[]) =>
    asHtml([
      table(
        above,
        [
          { head: 'a', of: () => 'x' },
          { head: 'b', of: () => 'y' },
        ],
        {},
        (line) => (line === undefined ? {} : { above: line }),
      ),
    ]);

  it('begins each with its line over the width of the table, in HTML alone', () => {
    const html = made(['Run <1>', undefined, 'Run 2']);
    const groups = [...html.matchAll(/<tbody>[\s\S]*?<\/tbody>/g)].map((m) => m[0]);
    expect(groups.map((g) => g.match(/<td>x<\/td>/g)!.length)).toEqual([2, 1]);
    expect(groups[0]).toContain('<tr class="above"><th colspan="2" scope="rowgroup">Run &lt;1&gt;</th></tr>');
  });

  it('has groups without a line as well', () => {
    const html = made(['Run 1', '', undefined]);
    expect(html.match(/<tbody>/g)).toHaveLength(2);
    expect(html.match(/class="above"/g)).toHaveLength(1);
  });
});
