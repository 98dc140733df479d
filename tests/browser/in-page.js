// Runs in the page under test, by the browser's own debugging door, which the page's content policy does not close.
globalThis.lookAt = {
  /** What the page is made of. `names` are the calendar's. */
  facts(names) {
    const all = [...document.querySelectorAll('*')];
    const body = all.filter((element) => document.body.contains(element));
    return {
      title: document.title,
      language: document.documentElement.lang,
      headings: all
        .filter((element) => /^H[1-6]$/.test(element.tagName))
        .map((element) => ({ level: Number(element.tagName[1]), text: element.textContent.trim() })),
      landmarks: {
        main: document.querySelectorAll('main').length,
        banner: document.querySelectorAll('body > header').length,
        footer: document.querySelectorAll('body > footer').length,
        navigation: [...document.querySelectorAll('nav')].map((nav) => nav.getAttribute('aria-label') ?? ''),
      },
      strayContent: [...document.body.children]
        .filter((child) => !child.matches('a.skip-link, header, main, footer, script'))
        .map((child) => child.tagName),
      ids: all.filter((element) => element.id !== '').map((element) => element.id),
      pointers: all.flatMap(listPointers),
      links: [...document.querySelectorAll('[href]')].map((element) => element.getAttribute('href')),
      sources: all.filter((element) => element.hasAttribute('src')).map((element) => element.getAttribute('src')),
      inlineStyles: all.filter((element) => element.hasAttribute('style')).map(describe),
      handlers: all.flatMap((element) => element.getAttributeNames().filter((name) => name.startsWith('on'))),
      names: [...listNamesInText(names), ...body.flatMap((element) => listNamesInAttributes(element, names))],
      text: readWritten(),
    };
  },

  /** What does not fit into the window's width, what is cut off, and what lies over something else. */
  misfits() {
    const width = document.documentElement.clientWidth;
    const misfits = [];
    if (document.documentElement.scrollWidth > width) {
      misfits.push(`the page is ${document.documentElement.scrollWidth} px wide in a window of ${width}`);
    }
    for (const element of document.body.querySelectorAll('*')) {
      if (!isSeen(element) || element.closest('svg') !== null) continue;
      const { overflowX, overflowY } = getComputedStyle(element);
      const wide = element.scrollWidth > element.clientWidth + 1 && element.clientWidth > 0;
      const tall = element.scrollHeight > element.clientHeight + 1 && element.clientHeight > 0;
      if (wide && scrolls(overflowX)) {
        if (element.tabIndex < 0) misfits.push(`scrolls, but not with the keyboard: ${describe(element)}`);
        if (!element.matches('.score-frame, .scroll, pre')) misfits.push(`scrolls sideways: ${describe(element)}`);
      }
      if ((wide && cuts(overflowX)) || (tall && cuts(overflowY))) misfits.push(`is cut off: ${describe(element)}`);
    }
    return [...misfits, ...listBeyond(width), ...listOverlaps()];
  },

  /** WCAG 2.2, 1.4.12: what a reader may set, and the page must bear. */
  spaceText() {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(
      '* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important }' +
        'p { margin-bottom: 2em !important }',
    );
    document.adoptedStyleSheets = [sheet];
  },

  /** In print, all of the given kind but one are gone; `undefined` brings them back. */
  keepOnly(selector, index) {
    const parts = [...document.querySelectorAll(selector)];
    for (const part of parts) part.classList.remove('kept');
    document.adoptedStyleSheets = [];
    if (index === undefined) return;
    parts[index].classList.add('kept');
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(
      `main > *:not(:has(.kept)):not(.kept) { display: none !important } .kept { break-after: auto !important }`,
    );
    document.adoptedStyleSheets = [sheet];
  },

  /** Tries what a shared pack must not be able to do; resolves to what the content policy stopped. */
  async phoneHome(expected, patienceMs) {
    const stopped = new Set();
    const allStopped = new Promise((resolve) => {
      setTimeout(resolve, patienceMs);
      document.addEventListener('securitypolicyviolation', ({ effectiveDirective }) => {
        stopped.add(effectiveDirective);
        if (expected.every((directive) => stopped.has(directive))) resolve();
      });
    });
    const address = 'https://pack.invalid/';
    document.body.append(
      Object.assign(document.createElement('img'), { src: address }),
      Object.assign(document.createElement('iframe'), { src: address }),
      Object.assign(document.createElement('script'), { textContent: 'document.title = "taken over"' }),
      Object.assign(document.createElement('style'), { textContent: 'body { display: none }' }),
    );
    fetch(address).catch(() => undefined);
    await allStopped;
    return { stopped: [...stopped].sort(), title: document.title };
  },
};

/** The page's text as it is seen, without what its script adds: players of runs, help with marking, words on the present day. */
function readWritten() {
  const added = [...document.querySelectorAll('.run-player, .marking-offer, .today-notice:not([hidden])')];
  for (const part of added) part.hidden = true;
  // biome-ignore lint/performance/useDomNodeTextContent: what is wanted is the text as it is seen.
  const text = document.body.innerText;
  for (const part of added) part.hidden = false;
  return text;
}

function describe(element) {
  const start = element.outerHTML.replace(element.innerHTML, '');
  return `${start.slice(0, 120)} ${element.textContent.trim().slice(0, 40)}`;
}

/** Attributes by which one element names another of the same page. */
function listPointers(element) {
  const kinds = ['aria-labelledby', 'aria-describedby', 'aria-controls', 'for', 'headers'];
  const ids = kinds.flatMap((kind) => (element.getAttribute(kind) ?? '').split(/\s+/));
  const paints = element.getAttributeNames().map((name) => /url\(#([^)]+)\)/.exec(element.getAttribute(name))?.[1]);
  return [...ids, ...paints].filter((id) => id !== undefined && id !== '');
}

/** The names in a text, none within another: the longest come first in `names`. */
function findNames(text, names) {
  const edge = (letter) => letter === undefined || !/\p{L}/u.test(letter);
  let rest = text;
  return names.filter((name) => {
    const at = rest.indexOf(name);
    const found = at >= 0 && edge(rest[at - 1]) && edge(rest[at + name.length]);
    if (found) rest = rest.replaceAll(name, (words) => '\u0000'.repeat(words.length));
    return found;
  });
}

function listNamesInText(names) {
  const found = [];
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (walker.nextNode()) {
    const { data, parentElement } = walker.currentNode;
    if (parentElement.closest('script, style') !== null) continue;
    for (const name of findNames(data, names))
      found.push({ name, text: data.trim(), tag: findTag(parentElement), inCell: parentElement.matches('td, th') });
  }
  return found;
}

/** Attributes whose words are read out. */
const SPOKEN = [
  'alt',
  'aria-label',
  'aria-description',
  'aria-roledescription',
  'aria-valuetext',
  'placeholder',
  'title',
];

function listNamesInAttributes(element, names) {
  return SPOKEN.flatMap((attribute) => {
    const text = element.getAttribute(attribute) ?? '';
    return findNames(text, names).map((name) => ({ name, text, tag: findTag(element), inCell: false }));
  });
}

/** The language that an element, or one around it inside the body, is tagged with. */
function findTag(element) {
  return element.closest('body [lang]')?.getAttribute('lang') ?? '';
}

function scrolls(overflow) {
  return overflow === 'auto' || overflow === 'scroll';
}

function cuts(overflow) {
  return overflow === 'hidden' || overflow === 'clip';
}

/** Not seen: what is not drawn, and what stands there for voices alone. */
function isSeen(element) {
  return (
    element.checkVisibility({ visibilityProperty: true }) && element.closest('.visually-hidden, .skip-link') === null
  );
}

/** Texts with the boxes of their lines. Words in a picture are laid out by the picture. */
function listTexts() {
  const texts = [];
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  const range = document.createRange();
  while (walker.nextNode()) {
    const { currentNode: node } = walker;
    const { parentElement: parent } = node;
    if (node.data.trim() === '' || parent.closest('svg, script, style') !== null || !isSeen(parent)) continue;
    range.selectNodeContents(node);
    texts.push({ text: node.data.trim().slice(0, 40), parent, boxes: [...range.getClientRects()] });
  }
  return texts;
}

function listBeyond(width) {
  return listTexts()
    .filter(({ parent }) => parent.closest('.score-frame, .scroll, pre') === null)
    .filter(({ boxes }) => boxes.some((box) => box.right > width + 1 || box.left < -1))
    .map(({ text }) => `runs out of the window: ${text}`);
}

/** Pairs of texts of which one lies over the other. A line box is taller than its letters: a fifth may overlap. */
function listOverlaps() {
  const lines = listTexts().flatMap(({ text, boxes }, id) =>
    boxes.map(({ left, right, top, height }) => ({
      id,
      text,
      left: left + 1,
      right: right - 1,
      top: top + height * 0.2,
      bottom: top + height * 0.8,
    })),
  );
  lines.sort((a, b) => a.top - b.top);
  const overlaps = new Set();
  for (const [index, a] of lines.entries()) {
    for (let next = index + 1; next < lines.length && lines[next].top < a.bottom; next += 1) {
      const b = lines[next];
      if (a.id !== b.id && a.left < b.right && b.left < a.right)
        overlaps.add(`lies over another: ${a.text} / ${b.text}`);
    }
  }
  return [...overlaps];
}
