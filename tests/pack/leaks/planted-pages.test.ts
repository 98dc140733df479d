import { describe, expect, it } from 'vitest';
import { openContent } from '../../directives/build-week.ts';
import { openLeakLesson, pathOf, plant } from './leak-week.ts';

const QUIZ = `:::group-quiz[Every form]{groups=2 seed=forms}
Read each question twice.

1. Where does the light of the Moon come from?
   - [x] from the far side of the sky
   - [ ] from the sea
     > They think that the sea glows by itself at night.
   - [ ] from a lamp

   ::answer{hint="Ask where the Sun has gone in the evening." working="The Sun always lights one half of the Moon. We see a part of that half."}

2. What follows Round Moon?

   ::answer[Butter Moon]{accept="the yellow moon of harvest" working="It stands next on the wall."}

3. How many nights has High Water?

   ::answer[3]

4. Which hand?

   ::answer[left]

5. Put in the order of the month:
   1. Hidden Moon
   2. Half Shell
   3. Round Moon
   4. Other Half

6. Match nights and groups.

   | Night | Group |
   | --- | --- |
   | Hidden Moon | Dark Water |
   | Half Shell | Open Channel |
   | Round Moon | High Water |

7. Why does the Moon shine?

   ::answer{rubric="2: says that it is a dark ball in sunlight; 1: names the Sun" lines=4}

8. Draw the Moon of Wednesday.

   ::answer{draw=wednesday}
:::

:::teacher[If it goes wrong]
Put one sure child at each corner of the room, and nobody is lost.
:::

:::handout[Sky slip]
Draw what you see. High Water is a group of nights.

::gesture-sequence{nights="High Water" tempo=72}
:::
`;

const opened = openLeakLesson(QUIZ, openContent());
const PAPERS = pathOf(opened, 'quiz');
const HANDOUT = pathOf(opened, 'sky-slip');
const LIST = 'learners/index.html';
const WORKING = 'The Sun always lights one half of the Moon.';

const base64 = (text: string) => btoa(String.fromCharCode(...new TextEncoder().encode(text)));
const hex = (text: string, wrap: (digits: string) => string) =>
  [...text].map((letter) => wrap(letter.charCodeAt(0).toString(16))).join('');

/** Findings after a planting, as `line:column severity message`. */
function findPlanted(path: string, from: string | RegExp, to: string): string[] {
  const found = opened.find(plant(opened.files, path, from, to));
  for (const { rule, place } of found) expect([rule, place.file]).toEqual(['learner-leak', `pack/${path}`]);
  return found.map(({ severity, message }) => `${severity} ${message}`);
}

it('finds nothing where nothing is planted', () => {
  expect(opened.find()).toEqual([]);
  expect(opened.find(opened.files, 'built')).toEqual([]);
});

describe('a sentence of the key is found', () => {
  const places: readonly (readonly [where: string, planted: string, told: string])[] = [
    ['in the text', `<p>${WORKING}</p>`, 'in the text'],
    ['in capitals', `<p>${WORKING.toUpperCase()}</p>`, 'in the text'],
    ['without its punctuation', `<p>the sun (always) lights: one half – of the Moon</p>`, 'in the text'],
    ['parted by tags in a word', '<p>The S<b>u</b>n alw<i>ays</i> lights one half of the Moon.</p>', 'in the text'],
    [
      'parted by tags between words',
      '<p><span>The</span><span>Sun</span><span>always</span><span>lights</span><span>one</span><span>half</span><span>of</span><span>the</span><span>Moon</span></p>',
      'in the text',
    ],
    ['parted by blocks', '<div>The Sun always lights</div><div>one half of the Moon.</div>', 'in the text'],
    ['with soft hyphens', '<p>The Sun al&shy;ways lights one h&#173;alf of the Mo\u00adon.</p>', 'in the text'],
    ['with characters of no width', '<p>The S\u200bun always lights one half of the M&#x200d;oon.</p>', 'in the text'],
    ['as references', `<p>${hex(WORKING, (digits) => `&#x${digits};`)}</p>`, 'in the text'],
    ['in an attribute', `<p class="${WORKING}"></p>`, 'in the attribute `class` of `<p>`'],
    [
      'in an attribute with references',
      `<p lang="${hex(WORKING, (digits) => `&#x${digits};`)}"></p>`,
      'in the attribute `lang`',
    ],
    ['in an alternative text', `<img src="images/a.png" alt="${WORKING}">`, 'in the attribute `alt` of `<img>`'],
    ['in a title', `<p title='${WORKING}'></p>`, 'in the attribute `title` of `<p>`'],
    [
      'in an attribute without quotes',
      '<p title=The_Sun-always_lights_one/half_of_the_Moon.></p>',
      'in the attribute `title`',
    ],
    ['in a comment', `<!-- ${WORKING} -->`, 'in a comment'],
    ['in a comment without an end', `<!-- ${WORKING}`, 'in a comment'],
    ['in JSON-LD', `<script type="application/ld+json">{"text":"${WORKING}"}</script>`, 'in a script'],
    [
      'in a script with escapes',
      `<script>a="${hex(WORKING, (digits) => `\\x${digits}`)}"</script>`,
      'in a script, coded (escapes)',
    ],
    [
      'in JSON with escapes',
      `<script>["${hex(WORKING, (digits) => `\\u00${digits}`)}"]</script>`,
      'in a script, coded (escapes)',
    ],
    ['in a style sheet', `<style>p::after { content: "${WORKING}" }</style>`, 'in a style sheet'],
    [
      'in a style sheet with escapes',
      `<style>p::after { content: "${hex(WORKING, (digits) => `\\${digits} `)}" }</style>`,
      'in a style sheet, coded (escapes)',
    ],
    ['in the title of a drawing', `<svg><title>${WORKING}</title></svg>`, 'in the text'],
    ['in the description of a drawing', `<svg><desc>${WORKING}</desc><metadata/></svg>`, 'in the text'],
    ['in base64', `<p>${base64(WORKING)}</p>`, 'in the text, coded (base64)'],
    ['in base64 in an attribute', `<p id="${base64(WORKING)}"></p>`, 'in the attribute `id` of `<p>`, coded (base64)'],
    [
      'in base64 of UTF-16',
      `<p>${btoa([...WORKING].map((letter) => `${letter}\0`).join(''))}</p>`,
      'in the text, coded (base64)',
    ],
    [
      'in an address, percent-coded',
      `<a href="https://example.org/?q=${encodeURIComponent(WORKING)}">a</a>`,
      'in the attribute `href` of `<a>`, coded (percent)',
    ],
    [
      'in base64, percent-coded',
      `<a href="https://example.org/?q=${encodeURIComponent(`${base64(`${WORKING} `)}`)}">a</a>`,
      'coded (',
    ],
    [
      'in a data address',
      `<img alt="" src="data:image/svg+xml;base64,${base64(`<svg><title>${WORKING}</title></svg>`)}">`,
      'in the attribute `src` of `<img>`, coded (base64)',
    ],
    ['in an element that is not shown', `<p hidden>${WORKING}</p>`, 'in the text'],
    ['in what is left open', `<p title="${WORKING}`, 'in the text'],
  ];

  it.each(places)('%s', (_where, planted, told) => {
    const found = findPlanted(PAPERS, '</main>', `${planted}</main>`);
    expect(found).toContainEqual(
      expect.stringContaining(
        `error The working of question 1 of \`Every form\` in \`lessons/test-week/input.md\` stands ${told.startsWith('coded') ? '' : told}`,
      ),
    );
    if (told.startsWith('coded')) expect(found.join()).toContain(told);
  });

  it.each([
    ['the hint', 'Ask where the Sun has gone in the evening.', 'The hint for question 1'],
    [
      'what a wrong option means',
      'They think that the sea glows by itself at night.',
      'What the key says of a wrong answer to question 1',
    ],
    ['the rubric', 'It says that it is a dark ball in sunlight, here.', 'The marking of question 7'],
    [
      'a note for the teacher',
      'Put one sure child at each corner of the room, and nobody is lost.',
      'A note for the teacher of `lessons/test-week/input.md`',
    ],
  ])('%s, on any page', (_what, text, told) => {
    for (const path of [PAPERS, HANDOUT, LIST]) {
      const found = findPlanted(path, '</main>', `<p>${text}</p></main>`);
      expect(found).toEqual([expect.stringContaining(`error ${told}`)]);
    }
  });

  it('with its place', () => {
    const files = plant(opened.files, LIST, '</main>', `\n\n <p>A <b>cover</b>\n<i>${WORKING}</i></p></main>`);
    const text = String(files.find(({ path }) => path === LIST)?.content);
    const [found] = opened.find(files);
    // The run of text begins with the paragraph.
    const before = text.slice(0, text.indexOf('A <b>cover'));
    expect(found?.place).toEqual({
      file: `pack/${LIST}`,
      line: before.split('\n').length,
      column: before.length - before.lastIndexOf('\n'),
    });
  });

  it('in a page in UTF-16', () => {
    const text = `\ufeff<!doctype html><p>${WORKING}</p>`;
    const content = new Uint8Array(
      [...text].flatMap((letter) => [letter.charCodeAt(0) & 255, letter.charCodeAt(0) >> 8]),
    );
    expect(opened.find([{ path: 'learners/more.html', content }], 'built')).toEqual([
      expect.objectContaining({ message: expect.stringContaining('The working of question 1') }),
    ]);
  });
});

describe('a written answer is found where nobody reads', () => {
  it.each([
    ['a class', '<p class="x-butter-moon">', 'in the attribute `class` of `<p>`'],
    ['a class without a space', '<p class="show buttermoon">', 'in the attribute `class` of `<p>`'],
    ['an id', '<p id="butterMoon">', 'in the attribute `id` of `<p>`'],
    ['a label', '<p aria-label="Butter Moon">', 'in the attribute `aria-label` of `<p>`'],
    ['an address', '<a href="https://example.org/butter_moon">', 'in the attribute `href` of `<a>`'],
    ['a comment', '<!--Butter Moon-->', 'in a comment'],
    ['base64', `<p id="${base64('Butter Moon')}">`, 'in the attribute `id` of `<p>`, coded (base64)'],
    ['a style sheet', '<style>p::after { content: "Butter Moon" }</style>', 'in a style sheet'],
    ['a comment of a style sheet', '<style>/* butter moon */</style>', 'in a style sheet'],
    ['an attribute of no standard', '<p answer="the yellow moon of harvest">', 'in the attribute `answer` of `<p>`'],
  ])('in %s, on any page', (_where, planted, told) => {
    for (const path of [PAPERS, HANDOUT, LIST]) {
      const found = findPlanted(path, '</main>', `${planted}</main>`);
      expect(found.join('\n')).toContain(
        `The answer to question 2 of \`Every form\` in \`lessons/test-week/input.md\` stands ${told}`,
      );
    }
  });

  it.each([
    ['a number', '<p title="3">', 'question 3'],
    ['a usual word', '<p title="Left">', 'question 4'],
    ['a usual word as a class', '<p class="line left">', 'question 4'],
  ])('though it is %s, where it stands alone', (_what, planted, told) => {
    expect(findPlanted(PAPERS, '</main>', `${planted}</main>`)).toEqual([
      expect.stringContaining(`The answer to ${told}`),
    ]);
  });

  it('but not where a usual word is part of something else', () => {
    const harmless = '<p class="paper-head"></p><p>Keep left: 3 steps.</p><p aria-label="Turn left 3 times"></p>';
    expect(findPlanted(HANDOUT, '</main>', `${harmless}</main>`)).toEqual([]);
  });
});

describe('a written answer is found in plain sight', () => {
  it('on its own paper, outside of questions and options', () => {
    for (const mark of ['<p class="paper-total">', '<p class="answer-line">', '</main>', '<ol class="questions">']) {
      const found = findPlanted(PAPERS, mark, `<p>Butter Moon</p>${mark}`);
      expect(found).toEqual([expect.stringContaining('The answer to question 2 of `Every form`')]);
    }
  });

  it('beside its own question, though it is a usual word or a number', () => {
    const page = String(opened.files.find(({ path }) => path === PAPERS)?.content);
    const line = /<p class="answer-line">.*?(?=<\/p>)/s.exec(page)?.[0] ?? '';
    // The first line is that of question 2, the second that of question 3, the third that of question 4.
    const put = (place: number, answer: string) => {
      const content = page
        .split(line)
        .reduce((all, part, at) => `${all}${line}${at === place ? ` ${answer}` : ''}${part}`);
      return opened.find([{ path: PAPERS, content }]).map(({ message }) => message);
    };
    expect(put(2, '3')).toEqual([expect.stringContaining('The answer to question 3')]);
    expect(put(3, 'left')).toEqual([expect.stringContaining('The answer to question 4')]);
    expect(put(1, '3')).toEqual([]);
  });
});

describe('what no page for learners may have is found', () => {
  it.each([
    ['a data attribute', '<p data-right="b">', 'data-right="b"'],
    ['something to fill in', '<input type="checkbox">', '<input>'],
    ['a box that is ticked', '<span checked>', 'checked=""'],
    ['a state for programs', '<span aria-checked="true">', 'aria-checked="true"'],
    ['a comment', '<!-- a -->', '<!-- a -->'],
    ['metadata', '<meta name="author" content="A. Teacher">', '<meta name="author" content="A. Teacher">'],
    ['JSON-LD', '<script type="application/ld+json">{}</script>', '<script>'],
    ['a script', '<script>a()</script>', '<script>'],
    ['a script in an attribute', '<p onclick="a()">', 'onclick="a()"'],
    ['another frame', '<iframe src="https://example.org/"></iframe>', '<iframe>'],
    ['a link to the key', '<a href="../key.html">', 'href="../key.html"'],
    ['a link to a page that is not for learners', '<a href="key.html#a">', 'href="key.html#a"'],
    ['a link out of the pack', '<a href="file:///etc/hosts">', 'href="file:///etc/hosts"'],
    ['a link out of the folder in another coding', '<a href="%2e%2e/key.html">', 'href="%2e%2e/key.html"'],
    ['an order of its own', '<p tabindex="2">', 'tabindex="2"'],
    ['a value', '<p value="2">', 'value="2"'],
    ['hidden text', '<p hidden>a hidden line</p>', 'a hidden line'],
    ['text that a style hides', '<p style="display: none">a hidden line</p>', 'a hidden line'],
    ['a template', '<template><p>a hidden line</p></template>', 'a hidden line'],
    ['a style for one place', '<style>li:nth-child(3) { top: 0 }</style>', 'li:nth-child(3) { top: 0 }'],
    ['a style behind a typeface', '<style>@font-face{}li:last-child{}</style>', '@font-face{}li:last-child{}'],
  ])('%s', (_what, planted, told) => {
    for (const path of [PAPERS, HANDOUT, LIST]) {
      const found = findPlanted(path, '</main>', `${planted}</main>`);
      expect(found).toEqual([expect.stringContaining(`error Found \`${told}\` in a file for learners; expected `)]);
    }
  });

  it('but links to the web, to the list and to other pages are', () => {
    const links = `<a href="https://example.org/a">a</a><a href="mailto:a@example.org">a</a><a href="index.html#main">a</a><a href="../${PAPERS}">a</a>`;
    expect(findPlanted(HANDOUT, '</main>', `${links}</main>`)).toEqual([]);
  });

  it('a page that nobody planned, by its name', () => {
    const found = opened.find([...opened.files, { path: 'learners/butter-moon.html', content: '<p>a</p>' }], 'built');
    expect(found.map(({ message }) => message)).toEqual([
      expect.stringContaining(
        'The answer to question 2 of `Every form` in `lessons/test-week/input.md` stands in the name of the file',
      ),
    ]);
  });
});

describe('options that differ are found', () => {
  it.each([
    ['by a class', '<li class="x">', 'class="x"'],
    ['by an id that counts as written', '<li id="option-2">', 'id="option-2"'],
    ['by an attribute without a value', '<li inert>', 'inert=""'],
    ['by an order for the keyboard', '<li tabindex="0">', 'tabindex="0"'],
    ['by a tag', '<li><i></i>', '<i>'],
  ])('%s', (_what, planted, told) => {
    const found = findPlanted(PAPERS, /<li>(?=<span class="tick-box"><\/span><span class="letter">B)/, planted);
    expect(found).toEqual([
      expect.stringContaining(
        `Found \`${told}\` in a file for learners; expected the same around each option of question 1`,
      ),
    ]);
  });

  it('by ids that count as written, but not by ids that count as shown', () => {
    const page = String(opened.files.find(({ path }) => path === PAPERS)?.content);
    const number = (order: readonly number[]) => {
      let at = -1;
      const content = page.replace(/<li>(?=<span class="tick-box">)/g, (item) => {
        at += 1;
        return at < order.length ? `<li id="q-${order[at]}">` : item;
      });
      return opened.find([{ path: PAPERS, content }]).map(({ message }) => message);
    };
    expect(number([1, 2, 3])).toEqual([]);
    expect(number([7, 8, 9])).toEqual([]);
    expect(number([2, 1, 3])).toEqual([expect.stringContaining('Found `id="q-2"`')]);
  });

  it('among things to be put in order and to be matched', () => {
    const found = findPlanted(PAPERS, /<li>(?=<span class="letter">C)/, '<li lang="en">');
    expect(found).toEqual([expect.stringContaining('Found `lang="en"`')]);
  });
});

describe('the drawing of the key', () => {
  it('is found in the place to draw in', () => {
    const [expected] =
      opened.week.lessons[0]?.quizzes[0]?.key[0]?.answers.at(-1) === undefined
        ? []
        : [opened.week.lessons[0]?.quizzes[0]?.key[0]?.answers.at(-1)?.expected];
    if (expected?.kind !== 'disc') throw new Error('The last question is to be drawn.');
    const outline = /"d":"([^"]{12,})"/.exec(JSON.stringify(expected.drawing))?.[1] ?? '';
    const found = findPlanted(PAPERS, '</svg>', `<path d="${outline}"></path></svg>`);
    expect(found).toEqual([
      expect.stringContaining(
        'What is to be drawn in question 8 of `Every form` in `lessons/test-week/input.md` stands as a drawing',
      ),
    ]);
  });
});
