'use strict';
for (const ear of document.querySelectorAll('section.ear')) {
  const movement = ear.parentElement.closest('section') || document;
  const passages = [...movement.querySelectorAll('[data-line]')];
  const lines = ear.querySelector('.ear-lines'), copy = ear.querySelector('.ear-copy'), name = ear.dataset.section;
  let kept = {};
  try { kept = JSON.parse(localStorage.getItem(name)) || {}; } catch (error) { /* nothing is kept where the browser keeps nothing */ }
  const show = () => {
    const written = passages.filter(p => p.dataset.ruling).map(p => p.dataset.line + ' = ' + p.dataset.ruling + (p.dataset.why ? ', ' + p.dataset.why : ''));
    lines.textContent = written.length ? '[' + name + ']\n' + written.join('\n') + '\n' : '';
    lines.hidden = copy.hidden = !written.length;
    if (copy.dataset.words) copy.textContent = copy.dataset.words;
  };
  for (const passage of passages) {
    const choice = ear.querySelector('template').content.cloneNode(true);
    const weight = choice.querySelector('select'), why = choice.querySelector('input');
    const made = [passage.dataset.ruling || '', passage.dataset.why || '']; // as the page was made: a choice from before other settings is void
    const rule = () => {
      passage.dataset.ruling = weight.value;
      passage.dataset.why = why.value.replace(/\s+/g, ' ').replace(/ ;/g, ',').trim();
      kept[passage.dataset.line] = [weight.value, passage.dataset.why, ...made];
      try { localStorage.setItem(name, JSON.stringify(kept)); } catch (error) { /* as above */ }
      show();
    };
    const before = kept[passage.dataset.line];
    const [word, reason] = before && before[2] === made[0] && before[3] === made[1] ? before : made;
    weight.value = word;
    why.value = passage.dataset.why = reason;
    passage.dataset.ruling = word;
    weight.addEventListener('input', rule);
    why.addEventListener('input', rule);
    passage.append(choice);
  }
  copy.dataset.words = copy.textContent;
  copy.addEventListener('click', () => {
    const range = document.createRange();
    range.selectNodeContents(lines);
    getSelection().removeAllRanges();
    getSelection().addRange(range);
    if (document.execCommand('copy')) copy.textContent = copy.dataset.done;
  });
  show();
}
