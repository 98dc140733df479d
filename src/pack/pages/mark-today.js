{
  const now = new Date();
  const two = (number) => String(number).padStart(2, '0');
  const today = `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
  for (const time of document.querySelectorAll(`time[datetime="${today}"]`)) {
    const place = time.closest('.day-tab, .day-sheet');
    place?.classList.add('is-today');
    place?.querySelector('.today-flag')?.removeAttribute('hidden');
  }
}
