'use strict';
// Filters of the list and the drawings.
for (const form of document.querySelectorAll('form.filters')) {
  const section = form.closest('section.movement');
  const passages = [...section.querySelectorAll('details.passage')];
  const select = form.elements.pair;
  for (const pair of [...new Set(passages.map(p => p.dataset.pair))]) select.add(new Option(pair, pair));
  const takesPart = (p, pair) => !pair || p.dataset.pair === pair
    || pair.includes(' / ') && pair.split(' / ').every(body => p.dataset.bodies.split('|').includes(body));
  const show = () => {
    const kinds = new Set([...form.querySelectorAll('[name=kind]:checked')].map(box => box.value));
    const least = Number(form.querySelector('[type=radio]:checked').value);
    let count = 0;
    for (const p of passages) {
      const strong = Number(p.dataset.strength) >= least || (least === 1 && 'cited' in p.dataset);
      const on = kinds.has(p.dataset.kind) && strong && takesPart(p, select.value);
      p.hidden = !on;
      count += on;
      for (const mark of section.querySelectorAll('a.mark[href="#' + p.id + '"]')) mark.toggleAttribute('hidden', !on);
    }
    const said = form.querySelector('output');
    said.textContent = said.dataset.words.replace('#', count).replace('#', passages.length);
  };
  form.addEventListener('input', show);
  form.addEventListener('submit', event => event.preventDefault());
  show();
}
// A second seating beside the recommended one, and another seat of the audience.
for (const form of document.querySelectorAll('form.choices')) {
  const section = form.closest('section.movement');
  const chosen = what => form.querySelector('[data-chooses=' + what + ']:checked')?.value;
  const show = () => {
    const second = chosen('second'), seat = Number(chosen('seat'));
    for (const panel of section.querySelectorAll('.second')) panel.hidden = panel.dataset.place !== second;
    for (const said of section.querySelectorAll('.heard')) said.hidden = Number(said.dataset.seat) !== seat;
    for (const dot of section.querySelectorAll('.heard-at')) dot.setAttribute('x', dot.dataset.at.split(' ')[seat] + '%');
    for (const mark of section.querySelectorAll('a.mark')) mark.classList.toggle('lost', (mark.dataset.lost ?? '').split(' ').includes(second));
    const words = section.querySelector('.key .lost-words');
    if (words?.dataset.words) words.textContent = words.dataset.words.replace('#', form.querySelector('[data-chooses=second]:checked').dataset.name);
  };
  form.addEventListener('input', show);
  form.addEventListener('submit', event => event.preventDefault());
  show();
}
// The overview sorts all movements by a click on a heading, back by the next; the third puts them under their works again.
for (const table of document.querySelectorAll('table.index')) {
  const body = table.tBodies[0], heads = [...table.tHead.rows[0].cells], placed = [...body.rows], movements = placed.filter(row => row.dataset.place);
  const value = (row, at) => row.cells[at].dataset.sort ?? row.cells[at].textContent;
  heads.forEach((head, at) => {
    const button = document.createElement('button');
    button.type = 'button';
    button.append(...head.childNodes);
    head.append(button);
    button.addEventListener('click', () => {
      const next = { ascending: 'descending', descending: null }[head.getAttribute('aria-sort') ?? ''];
      const way = next === undefined ? 'ascending' : next;
      for (const other of heads) other.removeAttribute('aria-sort');
      if (way) head.setAttribute('aria-sort', way);
      table.classList.toggle('sorted', way !== null);
      const order = (a, b) => value(a, at).localeCompare(value(b, at), document.documentElement.lang, { numeric: true });
      body.replaceChildren(...(way ? [...movements].sort((a, b) => way === 'descending' ? order(b, a) : order(a, b)) : placed));
    });
  });
}
// On paper what is folded lies open: it can't be opened there.
let unfolded = [];
addEventListener('beforeprint', () => {
  unfolded = [...document.querySelectorAll('details.ground:not([open]), details.plain:not([open])')];
  for (const one of unfolded) one.open = true;
});
addEventListener('afterprint', () => { for (const one of unfolded) one.open = false; });
// A mark or a range of bars opens its passage.
const open = () => {
  const target = document.getElementById(decodeURIComponent(location.hash.slice(1)));
  if (!target || target.tagName !== 'DETAILS') return;
  target.hidden = false;
  target.open = true;
  target.querySelector('summary').focus();
};
addEventListener('hashchange', open);
open();
