// Finds the present day in the school's time zone, says what there is to say of it, and marks that day of the week.
{
  /** The device's date in a time zone as YYYY-MM-DD; without one, in the device's own. */
  const readDate = (timeZone) => {
    const form = { timeZone, year: 'numeric', month: '2-digit', day: '2-digit' };
    const parts = new Intl.DateTimeFormat('en-u-ca-gregory-nu-latn', form).formatToParts(new Date());
    const read = (type) => parts.find((part) => part.type === type).value;
    return `${read('year')}-${read('month')}-${read('day')}`;
  };
  const findToday = (timeZone) => {
    try {
      return readDate(timeZone);
    } catch {
      // A browser that does not know the zone.
      return readDate();
    }
  };
  const notice = document.querySelector('.today-notice');
  if (notice !== null) {
    const today = findToday(notice.dataset.timeZone);
    const lines = [...notice.children].filter((line) => line.dataset.from <= today);
    const line = lines[lines.length - 1];
    if (line !== undefined) {
      line.hidden = false;
      notice.hidden = false;
    }
    for (const time of document.querySelectorAll(`time[datetime="${today}"]`)) {
      const place = time.closest('.day-tab, .day-sheet');
      if (place === null) continue;
      place.classList.add('is-today');
      place.querySelector('.today-flag').hidden = false;
      if (place.matches('a')) place.setAttribute('aria-current', 'date');
    }
  }
}
