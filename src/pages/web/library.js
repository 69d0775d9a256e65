'use strict';
const table = document.querySelector('table.shelf');
const bodies = table ? [...table.tBodies] : [];
const keyOf = (body, column) => body.dataset['k' + column] || '';
const compare = (a, b) => a !== '' && b !== '' && !isNaN(a) && !isNaN(b) ? a - b : a === '' || b === '' ? (a === '') - (b === '') : a.localeCompare(b);
for (const [column, head] of (table ? [...table.tHead.rows[0].cells] : []).entries()) {
  const button = head.querySelector('button');
  if (!button) continue;
  button.addEventListener('click', () => {
    const down = head.getAttribute('aria-sort') === 'ascending';
    for (const other of table.tHead.rows[0].cells) other.removeAttribute('aria-sort');
    head.setAttribute('aria-sort', down ? 'descending' : 'ascending');
    bodies.sort((a, b) => (down ? -1 : 1) * compare(keyOf(a, column), keyOf(b, column)));
    table.append(...bodies);
  });
}
const filter = document.querySelector('form.filters');
if (filter) {
  const said = filter.querySelector('output');
  const show = () => {
    const words = filter.elements.words.value.toLowerCase().split(/\s+/).filter(Boolean);
    let count = 0;
    for (const body of bodies) {
      const text = body.textContent.toLowerCase();
      body.hidden = !words.every(word => text.includes(word));
      count += !body.hidden;
    }
    said.textContent = said.dataset.words.replace('#', count).replace('#', bodies.length);
  };
  filter.hidden = false;
  filter.addEventListener('input', show);
  filter.addEventListener('submit', event => event.preventDefault());
  show();
}
