// Small help with the page's elements.

/**
 * A new element.
 * @param classes Its classes, with spaces between them.
 * @param attributes Names and values; one that is `undefined` is left out.
 */
export function make(tag, classes, attributes, ...children) {
  const element = document.createElement(tag);
  if (classes !== '') element.className = classes;
  for (const [name, value] of Object.entries(attributes)) {
    if (value !== undefined) element.setAttribute(name, value);
  }
  element.append(...children);
  return element;
}

/** A button that does one thing. */
export function makeButton(classes, face, onClick) {
  const button = make('button', classes, { type: 'button' }, ...face);
  button.addEventListener('click', onClick);
  return button;
}

/** A sentence with its placeholders filled. */
export function fillWords(sentence, values) {
  return sentence.replace(/\{([a-z]+)\}/g, (_, name) => values[name]);
}

/** Copies of what is in an element, such as a reason with the names in it. */
export function copyInside(element) {
  return [...(element?.childNodes ?? [])].map((node) => node.cloneNode(true));
}

const SIGNS = {
  right: 'M4 11 8.5 15.5 16.5 5',
  partly: 'M3 11.5C6 7 9 7 10.5 9.5S14.5 12 17 8',
  wrong: 'M5 5 15 15M15 5 5 15',
  blank: 'M4 10H16',
};

/** The sign of a verdict, beside its word: a tick, a wave, a cross, a dash. */
export function makeSign(verdict) {
  const template = document.createElement('template');
  const path = `<path d="${SIGNS[verdict]}"/>`;
  template.innerHTML = `<svg class="marking-sign" viewBox="0 0 20 20" aria-hidden="true">${path}</svg>`;
  return template.content.firstChild;
}
