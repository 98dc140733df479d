// Runs in the page under test, by the browser's own debugging door. Notes, frame by frame, what a run shows and hears.
globalThis.watchPlayer = {
  notes: [],

  /** From now on, to be called after a run was set going: its player then comes first in each frame. */
  start(number) {
    const run = document.querySelectorAll('.gesture-run')[number];
    const audio = run.querySelector('audio');
    const disc = run.querySelector('.player-disc');
    this.notes = [];
    const note = () => {
      const rings = [...run.querySelectorAll('.count-row > .is-now')];
      const card = run.querySelector('.gesture-card.is-now');
      this.notes.push({
        seconds: audio.currentTime,
        clock: performance.now() / 1000,
        shown:
          card?.querySelector('.gesture-name span[lang]').textContent ??
          (rings.length > 0 ? `count ${rings.length}` : ''),
        disc: disc.textContent,
        moving: disc.getAnimations().length > 0,
        paused: audio.paused,
      });
      this.frame = requestAnimationFrame(note);
    };
    this.frame = requestAnimationFrame(note);
  },

  /** What was noted, once a beat is shown or, without one, the run is over. */
  async until(number, shown) {
    const run = document.querySelectorAll('.gesture-run')[number];
    const isThere = () => (shown === '' ? !run.classList.contains('is-playing') : this.notes.at(-1)?.shown === shown);
    while (!isThere()) await new Promise((resolve) => requestAnimationFrame(resolve));
    cancelAnimationFrame(this.frame);
    return this.notes;
  },

  /** Words of a run's part as they are seen: what is hidden is left out. */
  see(number, selector) {
    // biome-ignore lint/performance/useDomNodeTextContent: what is wanted is the text as it is seen.
    return document.querySelectorAll('.gesture-run')[number].querySelector(selector).innerText.trim();
  },

  /** How a part of a run is drawn. */
  style(number, selector, property) {
    return getComputedStyle(document.querySelectorAll('.gesture-run')[number].querySelector(selector))[property];
  },

  /** What a screen reader is given to say, from now on. */
  listen(number) {
    this.said = [];
    const says = document.querySelectorAll('.gesture-run')[number].querySelector('.player-says');
    new MutationObserver(() => this.said.push(says.textContent)).observe(says, { childList: true });
  },

  /** Each run's sound, as the browser has it. */
  sounds() {
    return [...document.querySelectorAll('.gesture-run audio')].map((audio) => ({
      paused: audio.paused,
      seconds: audio.currentTime,
      rate: audio.playbackRate,
      keepsPitch: audio.preservesPitch,
      source: audio.getAttribute('src'),
      shown: audio.checkVisibility(),
    }));
  },

  /** From now on keeps what plays outside of the page's own elements: the spoken names. */
  hearVoices() {
    this.played = new Set();
    const { played } = this;
    const play = HTMLMediaElement.prototype.play;
    HTMLMediaElement.prototype.play = function playKept() {
      if (!document.contains(this)) played.add(this);
      return play.call(this);
    };
  },

  voices() {
    return [...this.played].map(({ src, paused }) => ({ name: src.split('/').at(-1), paused }));
  },

  /** Where the focus is: class, words, and whether an outline shows it. */
  focus() {
    const place = document.activeElement;
    const { outlineStyle, outlineWidth } = getComputedStyle(place);
    return {
      name: place.className,
      // biome-ignore lint/performance/useDomNodeTextContent: what is wanted is the text as it is seen.
      words: place.innerText?.trim(),
      outlined: outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 2,
    };
  },
};
