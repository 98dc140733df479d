import { make, makeButton } from './make-element.js';
import { createHelp } from './marking-help.js';

/** A button that brings the help into a quiz and puts it away again; what was entered stays. */
function offerHelp(section, words) {
  let help;
  const toggle = makeButton('marking-toggle', [words.offer], () => {
    const isOpen = section.classList.toggle('is-marking');
    toggle.setAttribute('aria-expanded', String(isOpen));
    if (!isOpen) return;
    help ??= createHelp(section, words);
    help.start();
  });
  toggle.setAttribute('aria-expanded', 'false');
  section.querySelector('.quiz-key-head').append(make('p', 'marking-offer screen-only', {}, toggle));
}

const wordsOfPage = document.querySelector('.marking-words');
for (const section of document.querySelectorAll('.quiz-key')) {
  const hasAnswers = section.querySelector('.key-answers > li') !== null;
  if (hasAnswers) offerHelp(section, JSON.parse(wordsOfPage.textContent));
}
