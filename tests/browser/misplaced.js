// What is wrong with where things stand in a report; run in the browser by browser.ts, which says what it looks for.
(() => {
  const found = [];
  const wide = document.documentElement.clientWidth;
  if (document.documentElement.scrollWidth > wide) {
    found.push(`the page is ${document.documentElement.scrollWidth} wide, the window ${wide}`);
  }
  for (const box of document.querySelectorAll('.scroll')) {
    if (box.scrollWidth > box.clientWidth + 1) found.push(`table cut: ${box.textContent?.slice(0, 40)}`);
  }
  for (const own of document.querySelectorAll('h1, h2, h3, p, li, td, th, dt, dd, figcaption')) {
    // Heads of stacked tables are there for screen readers only.
    const head = own.closest('thead');
    if (head !== null && getComputedStyle(head).position === 'absolute') continue;
    const { right } = own.getBoundingClientRect();
    if (right > wide + 1 || own.scrollWidth > own.clientWidth + 2)
      found.push(`beyond: ${own.textContent?.slice(0, 60)}`);
  }
  for (const svg of document.querySelectorAll('svg')) {
    const frame = svg.getBoundingClientRect();
    const name = svg.querySelector('title')?.textContent;
    if (frame.left < -1 || frame.right > wide + 1) found.push(`${name}: beyond the page`);
    const texts = [...svg.querySelectorAll('text')].map((text) => ({
      words: text.textContent?.slice(0, 30) ?? '',
      box: text.getBoundingClientRect(),
    }));
    for (const { words, box } of texts) {
      const inside =
        box.left >= frame.left - 1 &&
        box.right <= frame.right + 1 &&
        box.top >= frame.top - 1 &&
        box.bottom <= frame.bottom + 1;
      if (!inside) found.push(`${name}: "${words}" leaves the picture`);
    }
    for (const [i, a] of texts.entries()) {
      for (const b of texts.slice(i + 1)) {
        const across = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left);
        const down = Math.min(a.box.bottom, b.box.bottom) - Math.max(a.box.top, b.box.top);
        // Boxes have room above and below the letters; they may share a fifth of it.
        if (across > 1 && down > 0.25 * Math.min(a.box.height, b.box.height)) {
          found.push(`${name}: "${a.words}" touches "${b.words}"`);
        }
      }
    }
  }
  return found;
})();
