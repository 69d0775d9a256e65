'use strict';
for (const form of document.querySelectorAll('form.filters')) {
  const section = form.closest('section');
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
      const on = kinds.has(p.dataset.kind) && Number(p.dataset.strength) >= least && takesPart(p, select.value);
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
const open = () => {
  const target = document.getElementById(decodeURIComponent(location.hash.slice(1)));
  if (!target || target.tagName !== 'DETAILS') return;
  target.hidden = false;
  target.open = true;
  target.querySelector('summary').focus();
};
addEventListener('hashchange', open);
open();
