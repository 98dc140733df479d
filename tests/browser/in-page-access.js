// Goes on with in-page.js: how a page is used with the keyboard, and by those who do not see its drawings or its colours.
Object.assign(globalThis.lookAt, {
  /** From now on notes each place that the Tab key reaches. */
  watchFocus() {
    this.reached = [];
    document.addEventListener('focusin', ({ target }) => this.reached.push(seeFocus(target)));
  },

  /** How many places the Tab key ought to reach. */
  countPlaces() {
    return listPlaces().length;
  },

  /** How the Tab key went round since `watchFocus`. */
  tabbing() {
    const places = listPlaces();
    const reached = this.reached.slice(0, places.length);
    const afterSkipLink = reached.slice(1);
    return {
      first: reached[0]?.element.className ?? '',
      missed: places.filter((place) => !reached.some(({ element }) => element === place)).map(describe),
      outOfOrder: reached
        .filter(({ element }, index) => element !== places[index])
        .map((stop) => describe(stop.element)),
      unseen: reached.filter((stop) => !stop.isSeen).map((stop) => describe(stop.element)),
      backwards: afterSkipLink
        .filter(({ box }, index) => index > 0 && leadsBack(afterSkipLink[index - 1].box, box))
        .map((stop) => describe(stop.element)),
    };
  },

  /** Places of the Tab key that may look different when they have the focus, one of each. */
  listKinds() {
    this.kinds = new Map(listPlaces().map((place) => [nameKind(place), place]));
    return [...this.kinds.keys()];
  },

  /** Gives the focus to the place of a kind, and says what it looks like and where. */
  focusKind(kind) {
    const place = this.kinds.get(kind);
    place.scrollIntoView({ block: 'center', inline: 'center' });
    place.focus();
    return { isSeen: seeFocus(place).isSeen, ...findSurroundings(place) };
  },

  blur() {
    document.activeElement.blur();
  },

  /** What on the page says by its look that it is something special: each class or attribute of that sort once. */
  listStates() {
    this.states = new Map();
    for (const element of document.body.querySelectorAll('*')) {
      if (!element.checkVisibility()) continue;
      for (const state of listStatesOf(element)) if (!this.states.has(state)) this.states.set(state, element);
    }
    return [...this.states.keys()];
  },

  /** Where the element of a state is, and whether it says the state in words that others of its kind have not. */
  showState(state) {
    const element = this.states.get(state);
    element.scrollIntoView({ block: 'center', inline: 'center' });
    return { hasWords: hasOwnWords(element, state), ...findSurroundings(element) };
  },

  /** Takes a state away, or gives it back. */
  setState(state, on) {
    const element = this.states.get(state);
    const [, attribute, value] = /^\[([a-z-]+)="(.*)"\]$/.exec(state) ?? [];
    if (attribute === undefined) element.classList.toggle(state.slice(1), on);
    else if (on) element.setAttribute(attribute, value);
    else element.removeAttribute(attribute);
  },

  /** What begins on the left where words run from right to left: lines, and what stands side by side. */
  unmirrored() {
    const faults = [];
    for (const element of document.body.querySelectorAll('*')) {
      if (!isSeen(element) || element.closest('svg, .strip-groups') !== null) continue;
      const { direction, display, flexDirection, textAlign } = getComputedStyle(element);
      const isWord = element.closest('bdi') !== null;
      if (direction !== 'rtl' && !isWord) faults.push(`runs from left to right: ${describe(element)}`);
      if (textAlign === 'left') faults.push(`begins on the left: ${describe(element)}`);
      if (/flex|grid/.test(display) && !flexDirection.startsWith('column')) faults.push(...listTurnedRows(element));
    }
    return faults;
  },

  /** Which way the words of elements run. */
  directions(selector) {
    return [...document.querySelectorAll(selector)].map((element) => getComputedStyle(element).direction);
  },

  /** Letters of Latin, digits and marks of the first such element as they stand from left to right. */
  shownOrder(selector) {
    const walker = document.createTreeWalker(document.querySelector(selector), NodeFilter.SHOW_TEXT);
    const range = document.createRange();
    const shown = [];
    while (walker.nextNode()) {
      for (const [at, letter] of [...walker.currentNode.data].entries()) {
        range.setStart(walker.currentNode, at);
        range.setEnd(walker.currentNode, at + 1);
        if (/[\w.:-]/.test(letter)) shown.push({ letter, left: range.getBoundingClientRect().left });
      }
    }
    shown.sort((a, b) => a.left - b.left);
    return shown.map(({ letter }) => letter).join('');
  },

  /** Drawings that say nothing to those who do not see them. */
  drawings() {
    const faults = [];
    for (const drawing of document.querySelectorAll('svg, img')) {
      if (drawing.parentElement.closest('svg') !== null || !drawing.checkVisibility()) continue;
      const isHidden = drawing.closest('[aria-hidden="true"]') !== null || drawing.getAttribute('alt') === '';
      if (isHidden && !hasWordsBeside(drawing)) faults.push(`hidden, without words beside it: ${describe(drawing)}`);
      if (!isHidden && readName(drawing).length < 4) faults.push(`without a name: ${describe(drawing)}`);
    }
    return [...faults, ...[...document.querySelectorAll('ol, ul')].flatMap(listAlike)];
  },

  /** Cells that no header explains. */
  tables() {
    return [...document.querySelectorAll('table')].flatMap((table) => {
      const headers = [...table.querySelectorAll('th')];
      const faults = headers.filter((header) => header.textContent.trim() === '').map(() => 'an empty header');
      if (headers.length === 0) faults.push('no header');
      if (headers.some((header) => header.closest('thead') === null && !header.hasAttribute('scope'))) {
        faults.push('a header that says not what for');
      }
      return faults.map((fault) => `${fault}: ${describe(table)}`);
    });
  },

  /** Texts that are tagged with a language, in the page and in what is read out. */
  textsIn(language) {
    const texts = [];
    for (const element of document.body.querySelectorAll('*')) {
      if (findTag(element) !== language || element.closest('script, style') !== null) continue;
      for (const node of element.childNodes) if (node.nodeType === Node.TEXT_NODE) texts.push(node.data.trim());
      for (const attribute of SPOKEN) texts.push(element.getAttribute(attribute) ?? '');
    }
    return texts.filter((text) => text !== '');
  },
});

/** WCAG 2.2, 1.4.11: what shows the focus stands out from its ground by so much. */
const LEAST_CONTRAST = 3;

function listPlaces() {
  return [...document.querySelectorAll('a[href], button, summary, input, select, textarea, [tabindex="0"]')].filter(
    (element) => element.checkVisibility(),
  );
}

function nameKind(element) {
  const name = (each) => `${each.tagName.toLowerCase()}${[...each.classList].map((one) => `.${one}`).join('')}`;
  return `${name(element.parentElement)} > ${name(element)}`;
}

/** How a place looks that has the focus: it is seen when a line of 2 px or more runs round it, and nothing lies over it. */
function seeFocus(element) {
  const { outlineStyle, outlineWidth, outlineColor } = getComputedStyle(element);
  const { top, bottom, left, right } = element.getBoundingClientRect();
  // The browser's own ring, `auto`, is wider than it says.
  const isOutlined = outlineStyle === 'auto' || (outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 2);
  const contrast = computeContrast(outlineColor, findGround(element.parentElement));
  const inWindow = bottom > 0 && right > 0 && top < innerHeight && left < innerWidth;
  return {
    element,
    isSeen: isOutlined && contrast >= LEAST_CONTRAST && inWindow && !isCovered(element),
    box: { top: top + scrollY, bottom: bottom + scrollY, left: left + scrollX, right: right + scrollX },
  };
}

/** Whether the middle of an element is under something else. */
function isCovered(element) {
  const [{ left, top, width, height }] = element.getClientRects();
  const hit = document.elementFromPoint(left + width / 2, top + height / 2);
  return hit !== null && !element.contains(hit) && !hit.contains(element);
}

/** Readers go on to the right or down, or, where words run from right to left, to the left or down: never back and up. */
function leadsBack(before, after) {
  const isRightToLeft = getComputedStyle(document.documentElement).direction === 'rtl';
  const isBehind = isRightToLeft ? after.right > before.left : after.left < before.right;
  return after.bottom <= before.top + 1 && isBehind;
}

/** A place in the window, with room for lines around it. */
function findSurroundings(element) {
  const { top, bottom, left, right } = element.getBoundingClientRect();
  const x = Math.max(0, left - 8);
  const y = Math.max(0, top - 8);
  const width = Math.min(innerWidth, right + 8) - x;
  return { clip: { x, y, width, height: Math.min(innerHeight, bottom + 8) - y } };
}

function findGround(element) {
  for (let each = element; each !== null; each = each.parentElement) {
    const { backgroundColor } = getComputedStyle(each);
    if (readColour(backgroundColor)[3] === 255) return backgroundColor;
  }
  return 'white';
}

/** Contrast of two colours, by WCAG 2.2, "relative luminance" and "contrast ratio". */
function computeContrast(one, other) {
  const [darker, lighter] = [one, other].map((colour) => computeLuminance(readColour(colour))).sort((a, b) => a - b);
  return (lighter + 0.05) / (darker + 0.05);
}

function computeLuminance(colour) {
  const linear = (part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4);
  const [red, green, blue] = [...colour].map((part) => linear(part / 255));
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** Red, green, blue and opacity, 0 to 255, of a colour in any notation. */
function readColour(colour) {
  const canvas = document.createElement('canvas').getContext('2d', { willReadFrequently: true });
  canvas.fillStyle = colour;
  canvas.fillRect(0, 0, 1, 1);
  return canvas.getImageData(0, 0, 1, 1).data;
}

function listStatesOf(element) {
  const classes = [...element.classList].filter((name) => /^(?:is-|ticked$|strong-beat$)/.test(name));
  // A class of the element or of what it stands in may say the same, and has the look.
  const isSaid = [element, element.parentElement].some((each) => each.matches('[class^="is-"], [class*=" is-"]'));
  if (isSaid) return classes.map((name) => `.${name}`);
  const attributes = ['aria-current', 'aria-pressed', 'aria-expanded'].flatMap((attribute) => {
    const value = element.getAttribute(attribute);
    return value === null || value === 'false' ? [] : [`[${attribute}="${value}"]`];
  });
  return [...classes.map((name) => `.${name}`), ...attributes];
}

/** Whether an element with a state has a part with words that none of its like without the state has. */
function hasOwnWords(element, state) {
  const like = [...document.querySelectorAll(element.tagName)].filter((each) => !each.matches(state));
  const parts = [...element.querySelectorAll('[class]')].filter((part) => part.textContent.trim() !== '');
  return parts.some((part) => {
    const selector = [...part.classList].map((name) => `.${name}`).join('');
    const isShown = part.checkVisibility();
    return isShown && selector !== '' && !like.some((each) => !each.contains(element) && each.querySelector(selector));
  });
}

/** Neighbours of one row of which the second stands to the right of the first, though nothing placed it there. */
function listTurnedRows(row) {
  const parts = [...row.children].filter(isSeen);
  return parts.slice(1).flatMap((after, index) => {
    const [first, second] = [parts[index], after].map((part) => part.getBoundingClientRect());
    const isPlaced = [parts[index], after].some((part) => {
      const { order, gridColumnStart } = getComputedStyle(part);
      return order !== '0' || gridColumnStart !== 'auto';
    });
    const isBeside = first.top < second.bottom && second.top < first.bottom;
    return isBeside && !isPlaced && second.left >= first.right - 1 ? [`stands on the right: ${describe(after)}`] : [];
  });
}

function readName(drawing) {
  const title = drawing.querySelector(':scope > title')?.textContent;
  return (title ?? drawing.getAttribute('aria-label') ?? drawing.getAttribute('alt') ?? '').trim();
}

/** Words, seen or heard, in what a drawing belongs to. */
function hasWordsBeside(drawing) {
  const whole = drawing.closest('li, figure, td, th, a, button, p, [role="group"], section') ?? drawing.parentElement;
  const copy = whole.cloneNode(true);
  for (const each of copy.querySelectorAll('svg, img')) each.remove();
  return copy.textContent.trim() !== '';
}

/** Drawings to choose between, or to put in order, must be told apart by their names. */
function listAlike(list) {
  const items = [...list.children].map((item) =>
    [...item.querySelectorAll('[role="img"], img')].map(readName).join(' '),
  );
  const isOfQuiz = list.closest('.question, .key-answer') !== null;
  if (!isOfQuiz) return [];
  const alike = items.filter((name, index) => name !== '' && items.indexOf(name) !== index);
  return alike.map((name) => `drawings of one name to choose from: ${name}`);
}
