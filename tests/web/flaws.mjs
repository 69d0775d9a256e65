// What a reader can't read on a page: words that lie on others, words that are cut, letters that are too small. Runs in the browser: page.evaluate(flaws).
export const flaws = () => {
  const least = matchMedia('print').matches ? 9.3 : 10; // pixels: 7 points on paper
  const seen = element => element.checkVisibility({ visibilityProperty: true }) && !element.closest('.unseen, .skip, select, output');
  // From where to where an element shows what is in it; what scrolls shows everything.
  const clips = new Map();
  const clip = element => {
    if (!element) return { left: 0, right: document.documentElement.clientWidth };
    if (clips.has(element)) return clips.get(element);
    let shown = clip(element.parentElement);
    const style = getComputedStyle(element), box = element.getBoundingClientRect();
    if (/auto|scroll/.test(style.overflowX) && element.scrollWidth > element.clientWidth) shown = { left: -Infinity, right: Infinity };
    else if (style.overflowX !== 'visible' && element !== document.documentElement && element !== document.body) {
      const margin = style.overflowX === 'clip' ? parseFloat(style.overflowClipMargin) || 0 : 0;
      shown = { left: Math.max(shown.left, box.left - margin), right: Math.min(shown.right, box.right + margin) };
    }
    clips.set(element, shown);
    return shown;
  };
  const found = [], boxes = [], range = document.createRange(), walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (walker.nextNode()) {
    const words = walker.currentNode.data.trim(), parent = walker.currentNode.parentElement;
    if (!words || ['SCRIPT', 'STYLE'].includes(parent.tagName) || !seen(parent)) continue;
    range.selectNodeContents(walker.currentNode);
    const shown = clip(parent), scale = parent.ownerSVGElement ? Math.abs(parent.getScreenCTM()?.a ?? 1) : 1, size = parseFloat(getComputedStyle(parent).fontSize) * scale;
    if (size < least && !parent.classList.contains('triplet')) found.push(`small: '${words.slice(0, 30)}' (${size.toFixed(1)})`);
    for (const { left, right, top, bottom, width, height } of range.getClientRects()) {
      if (width < 1 || height < 1) continue;
      if (right > 0 && (left < shown.left - 1 || right > shown.right + 1)) found.push(`cut: '${words.slice(0, 40)}' (${Math.round(left)} to ${Math.round(right)} of ${Math.round(shown.left)} to ${Math.round(shown.right)})`);
      const half = Math.min(size, height) * 0.36, middle = (top + bottom) / 2; // small letters: ascenders may come near the line before
      boxes.push({ words, parent, left: left + 1, right: right - 1, top: middle - half, bottom: middle + half });
    }
  }
  boxes.sort((a, b) => a.top - b.top);
  boxes.forEach((a, i) => {
    for (let k = i + 1; k < boxes.length && boxes[k].top < a.bottom - 1; k++) {
      const b = boxes[k];
      if (a.parent !== b.parent && a.left < b.right && b.left < a.right) found.push(`on each other: '${a.words.slice(0, 30)}' and '${b.words.slice(0, 30)}' (at ${Math.round(a.left)}, ${Math.round(a.top + scrollY)})`);
    }
  });
  return [...new Set(found)];
};
