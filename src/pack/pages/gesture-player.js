// Builds a player into each run of gestures. Where a run is in its time is always read from the sound itself; only
// where there is no sound to be had is it read from the clock. All of it is one script: a page that is opened from a
// folder cannot load modules.
{
  const REST = 0;
  const COUNT = 1;
  const CARD = 2;
  const SPEEDS = [0.75, 1, 1.25];
  /** A run that is cut from a longer track is stopped this long before its end, so that no stroke of what follows is heard. */
  const STOP_EARLY_MS = 40;
  /** Sound that ends within this time of its run's end has ended with it. */
  const ENDED_EARLY_MS = 1000;
  /** Sound that has not moved on for so long will not come. */
  const PATIENCE_MS = 3000;

  const template = document.querySelector('.player-template').content;
  const calm = matchMedia('(prefers-reduced-motion: reduce)');
  /** What may be heard, each with a way to stop it. */
  const stoppers = new Map();

  const stopOthers = (self) => {
    for (const [other, stop] of stoppers) if (other !== self) stop();
  };

  const formatTime = (ms) => {
    const seconds = Math.floor(Math.max(0, ms) / 1000);
    return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;
  };

  /** Copies of what an element holds, without the links that names have on the page. */
  const copy = (element) =>
    [...(element?.childNodes ?? [])].flatMap((node) => (node.nodeName === 'A' ? copy(node) : [node.cloneNode(true)]));

  /** One entry a beat, in order: when it is, what it is, and the group and the card that it belongs to. */
  const readBeats = (run, { events, end }) => {
    const parts = [...run.querySelectorAll('.gesture-group')].map((part) => ({
      part,
      cards: [...part.querySelectorAll('.gesture-card')],
      rings: [...part.querySelectorAll('.count-row > span')],
    }));
    return events.flatMap(([kind, atMs, beats, group, number], index) => {
      const beatMs = ((events[index + 1]?.[1] ?? end) - atMs) / beats;
      const { part, cards, rings } = parts[group];
      const isFirstCard = kind === CARD && number === 0;
      const opensGroup = (kind === COUNT && number === 1) || (isFirstCard && events[index - 1]?.[0] !== COUNT);
      return Array.from({ length: beats }, (_, beat) => ({
        kind,
        atMs: atMs + beat * beatMs,
        beatMs,
        beat: beat + 1,
        beats,
        number,
        part,
        rings,
        card: kind === CARD ? cards[number] : cards[0],
        opensGroup: opensGroup && beat === 0,
        // Where a step back or on may lead: each card, and where counting begins.
        isStop: beat === 0 && (kind === CARD || (kind === COUNT && number === 1)),
      }));
    });
  };

  /** The words and the drawing of a beat, large; and its place among the cards of the page. */
  const createStage = (run, bar, beats) => {
    const find = (name) => bar.querySelector(`.${name}`);
    const disc = find('player-disc');
    const groupName = (part) => copy(part.querySelector('.gesture-group-name span') ?? run.querySelector('.run-title'));
    const cardName = (card) => [card.querySelector('.gesture-name span:not(.gesture-count)').cloneNode(true)];

    const showDisc = ({ kind, number, card, beat }) => {
      disc.classList.toggle('is-rest', kind === REST);
      disc.classList.toggle('is-count', kind === COUNT);
      disc.classList.toggle('is-held', kind === CARD && beat > 1);
      disc.classList.toggle('is-strong', kind === CARD && beat === 1 && card.classList.contains('strong-beat'));
      const count = kind === CARD ? card.querySelector('.gesture-count').textContent : number;
      disc.textContent = kind === REST ? '' : count;
    };

    const showWords = (now, next) => {
      const { kind, part, card, beat, beats: of } = now;
      const counts = part.querySelector('.count-words');
      const names = {
        [REST]: copy(template.querySelector('.word-rest')),
        [COUNT]: copy(counts),
        [CARD]: cardName(card),
      };
      find('player-group').replaceChildren(...groupName(part));
      find('player-name').replaceChildren(...names[kind]);
      // The way that comes first on the card, standing or seated.
      find('player-how').replaceChildren(...copy(card.querySelector('.gesture-cue, .gesture-seated')));
      find('place-now').replaceChildren(...(kind === CARD ? copy(card.querySelector('.gesture-place')) : []));
      find('player-beat').hidden = kind !== CARD || of === 1;
      find('beat-now').textContent = beat;
      find('beat-of').textContent = of;
      const following = next === undefined ? copy(run.querySelector('.run-sentence q')) : cardName(next.card);
      find('next-name').replaceChildren(...following);
      find('player-next').classList.toggle('is-empty', following.length === 0);
      const drawing = card.querySelector('.gesture-drawing');
      find('player-drawing').replaceChildren(...copy(drawing));
      find('player-drawing').classList.toggle('is-coming', kind !== CARD);
    };

    const markPlace = (now) => {
      for (const marked of run.querySelectorAll('.is-now')) marked.classList.remove('is-now');
      run.querySelector('[aria-current]')?.removeAttribute('aria-current');
      if (now?.kind === CARD) {
        now.card.classList.add('is-now');
        now.card.setAttribute('aria-current', 'true');
      }
      if (now?.kind === COUNT) for (const ring of now.rings.slice(0, now.number)) ring.classList.add('is-now');
    };

    return {
      show(index, isMarked) {
        const now = beats[index];
        showDisc(now);
        showWords(
          now,
          beats.slice(index + 1).find(({ kind, beat }) => kind === CARD && beat === 1),
        );
        if (isMarked) markPlace(now);
      },
      showEnd() {
        markPlace();
        disc.className = 'player-disc';
        disc.textContent = '';
        const sentence = copy(run.querySelector('.run-sentence q'));
        const words = sentence.length > 0 ? sentence : copy(template.querySelector('.word-end'));
        find('player-name').replaceChildren(...words);
        find('player-how').replaceChildren();
        find('place-now').replaceChildren();
        find('player-beat').hidden = true;
        find('player-next').classList.add('is-empty');
      },
      pulse({ beatMs }, speed) {
        if (calm.matches) return;
        const duration = Math.min(400, (beatMs / speed) * 0.6);
        disc.animate([{ transform: 'scale(1.16)' }, { transform: 'none' }], { duration, easing: 'ease-out' });
      },
      /** Said aloud by a screen reader when it has time: once a group, or on a step that somebody made. */
      say({ kind, part, card, opensGroup }, everything) {
        const words = kind === CARD ? cardName(card) : copy(part.querySelector('.count-words'));
        if (everything || opensGroup)
          find('player-says').replaceChildren(...(opensGroup && kind === CARD ? groupName(part) : words));
      },
      sayEnd() {
        find('player-says').replaceChildren(...copy(find('player-name')));
      },
    };
  };

  const createPlayer = (run) => {
    const score = JSON.parse(run.querySelector('script').textContent);
    const beats = readBeats(run, score);
    const audio = run.querySelector('audio');
    const bar = template.querySelector('.run-player').cloneNode(true);
    const find = (name) => bar.querySelector(`.${name}`);
    const stage = createStage(run, bar, beats);
    const firstMs = score.from - score.zero;
    const lastMs = score.until - score.zero;

    let playing = false;
    let silent = false;
    /** True while it is silent only because the sound ended before its run did. */
    let isCutShort = false;
    let speed = 1;
    /** Where the run stands while nothing moves, in ms from its first beat. */
    let stillMs = firstMs;
    let clockFrom = 0;
    let shown = -1;
    let heardMs = 0;
    let movedAt = 0;

    const readMs = () => {
      if (!playing) return stillMs;
      if (silent) return stillMs + (performance.now() - clockFrom) * speed;
      return audio.currentTime * 1000 - score.zero;
    };

    const showButtons = () => {
      run.classList.toggle('is-playing', playing);
      find('when-still').hidden = playing;
      find('when-playing').hidden = !playing;
    };

    const showTime = (ms) => {
      find('player-line').value = Math.min(1, Math.max(0, ms / score.end));
      const text = `${formatTime(Math.min(ms, score.end))} / ${formatTime(Math.ceil(score.end / 1000) * 1000)}`;
      if (find('player-time').textContent !== text) find('player-time').textContent = text;
    };

    const findIndex = (ms) =>
      Math.max(
        0,
        beats.findLastIndex(({ atMs }) => atMs <= ms + 0.5),
      );

    const pause = () => {
      if (!playing) return;
      // Going on, the beat that was broken off is heard whole.
      stillMs = beats[findIndex(readMs())].atMs;
      playing = false;
      audio.pause();
      showButtons();
    };

    const finish = () => {
      pause();
      stillMs = firstMs;
      shown = -1;
      stage.showEnd();
      stage.sayEnd();
      showTime(score.end);
      if (!isCutShort) return;
      silent = isCutShort = false;
      find('player-silent').hidden = true;
    };

    const goSilent = () => {
      if (silent) return;
      stillMs = readMs();
      clockFrom = performance.now();
      silent = true;
      audio.pause();
      find('player-silent').hidden = false;
      find('player-says').replaceChildren(...copy(find('player-silent')));
    };

    const watchSound = () => {
      if (silent) return;
      if (audio.currentTime !== heardMs) movedAt = performance.now();
      heardMs = audio.currentTime;
      if (performance.now() - movedAt > PATIENCE_MS) goSilent();
    };

    /** Brings the page up to the sound. */
    const follow = () => {
      if (!playing) return;
      watchSound();
      const ms = readMs();
      const hasEnded = audio.ended && !silent;
      if (ms >= lastMs - (hasEnded ? ENDED_EARLY_MS : STOP_EARLY_MS)) {
        finish();
        return;
      }
      // A recording that is shorter than its run: the rest is for the eyes.
      if (hasEnded) {
        goSilent();
        isCutShort = true;
      }
      showTime(ms);
      const index = findIndex(ms);
      if (index === shown || ms < 0) return;
      shown = index;
      stage.show(index, true);
      stage.pulse(beats[index], speed);
      stage.say(beats[index], false);
    };

    const followFrames = () => {
      follow();
      if (playing) requestAnimationFrame(followFrames);
    };

    const play = () => {
      stopOthers(run);
      playing = true;
      shown = -1;
      clockFrom = movedAt = performance.now();
      showButtons();
      if (!silent) {
        audio.preload = 'auto';
        audio.currentTime = (stillMs + score.zero) / 1000;
        audio.defaultPlaybackRate = audio.playbackRate = speed;
        audio.play().catch(({ name }) => {
          if (name !== 'AbortError') goSilent();
        });
      }
      requestAnimationFrame(followFrames);
    };

    const moveTo = (ms) => {
      stillMs = ms;
      clockFrom = movedAt = performance.now();
      if (playing && !silent) audio.currentTime = (ms + score.zero) / 1000;
      shown = findIndex(ms);
      stage.show(shown, true);
      showTime(ms);
    };

    const step = (direction) => {
      const here = playing ? findIndex(readMs()) : Math.max(0, findIndex(stillMs));
      const stops = [...beats.keys()].filter((index) => beats[index].isStop);
      const to = direction > 0 ? stops.find((index) => index > here) : stops.findLast((index) => index < here);
      if (to === undefined) return;
      moveTo(beats[to].atMs);
      stage.say(beats[to], true);
    };

    const setSpeed = (index) => {
      const next = SPEEDS[index];
      if (next === undefined) return;
      stillMs = readMs();
      clockFrom = performance.now();
      speed = next;
      audio.defaultPlaybackRate = audio.playbackRate = speed;
      [...bar.querySelectorAll('output span')].forEach((word, each) => {
        word.hidden = each !== index;
      });
      find('player-slower').setAttribute('aria-disabled', String(index === 0));
      find('player-faster').setAttribute('aria-disabled', String(index === SPEEDS.length - 1));
    };

    const press = (button, change) => {
      const pressed = button.getAttribute('aria-pressed') !== 'true';
      button.setAttribute('aria-pressed', String(pressed));
      change(pressed);
    };

    const putSeatedFirst = (first) => {
      run.classList.toggle('is-seated', first);
      for (const seated of run.querySelectorAll('.gesture-seated')) {
        const cue = seated.parentElement.querySelector('.gesture-cue');
        (first ? seated : cue).parentElement.insertBefore(first ? seated : cue, first ? cue : seated);
      }
      stage.show(Math.max(0, shown), shown >= 0);
    };

    const onClick = {
      'player-play': () => (playing ? pause() : play()),
      'player-start': () => {
        moveTo(firstMs);
        stage.say(beats[shown], true);
      },
      'player-back': () => step(-1),
      'player-on': () => step(1),
      'player-slower': () => setSpeed(SPEEDS.indexOf(speed) - 1),
      'player-faster': () => setSpeed(SPEEDS.indexOf(speed) + 1),
      'player-mirror': (button) => press(button, (pressed) => run.classList.toggle('is-flipped', pressed)),
      'player-seated': (button) => press(button, putSeatedFirst),
    };

    for (const button of bar.querySelectorAll('button')) {
      button.addEventListener('click', () => onClick[button.classList[0]](button));
    }
    // What you see of your own hands has no mirror image that anybody sees.
    if (run.classList.contains('view-own')) find('player-mirror').remove();
    bar.addEventListener('keydown', (event) => {
      const direction = { ArrowLeft: -1, ArrowRight: 1 }[event.key];
      if (direction === undefined || event.altKey || event.ctrlKey || event.metaKey || event.shiftKey) return;
      event.preventDefault();
      step(direction);
    });
    audio.addEventListener('timeupdate', follow);
    audio.addEventListener('ended', follow);
    audio.addEventListener('error', () => {
      if (playing) goSilent();
    });
    stoppers.set(run, pause);

    // Without the part that it is to play: the player stops by itself, and earlier in time.
    audio.src = audio.getAttribute('src').replace(/#.*$/, '');
    audio.controls = false;
    audio.hidden = true;
    bar.setAttribute('aria-labelledby', run.getAttribute('aria-labelledby'));
    audio.after(bar);
    setSpeed(SPEEDS.indexOf(1));
    stage.show(0, false);
    showTime(0);
  };

  /** A link to somebody's saying of a name becomes a button; where the sound cannot be played it is a link again. */
  const createVoice = (link) => {
    const button = document.createElement('button');
    button.type = 'button';
    button.className = link.className;
    button.append(...copy(link));
    const voice = new Audio(link.href);
    voice.preload = 'none';
    button.addEventListener('click', () => {
      stopOthers(button);
      voice.currentTime = 0;
      voice.play().catch(({ name }) => {
        if (name !== 'AbortError') button.replaceWith(link);
      });
    });
    stoppers.set(button, () => voice.pause());
    link.replaceWith(button);
  };

  for (const run of document.querySelectorAll('.gesture-run')) createPlayer(run);
  for (const link of document.querySelectorAll('.hear-name')) createVoice(link);
}
