// Measures a sheet from within the browser and leaves what is wrong, a line each,
// in an element that --dump-dom prints.
addEventListener("load", () => {
  const wrong = [];
  const note = (what, element) => {
    const said = (element?.textContent ?? "").trim().replace(/\s+/g, " ").slice(0, 60);
    wrong.push(`${what}: ${said}`);
  };
  const inside = (inner, outer, slack) =>
    inner.left >= outer.left - slack && inner.right <= outer.right + slack &&
    inner.top >= outer.top - slack && inner.bottom <= outer.bottom + slack;
  if (document.documentElement.scrollWidth > document.documentElement.clientWidth) {
    note("the page is wider than the window", null);
  }
  // What Letter holds between the margins, in pixels of CSS; A4 holds more.
  const TALL = ((279.4 - 20) / 25.4) * 96;
  for (const page of document.querySelectorAll(".page")) {
    const box = page.getBoundingClientRect();
    const style = getComputedStyle(page);
    const padding = parseFloat(style.paddingTop) + parseFloat(style.paddingBottom);
    const inner = [...page.querySelectorAll("*")];
    for (const element of inner) {
      const own = element.getBoundingClientRect();
      // Words and boxes reach no further than the page.
      if (own.width && !element.closest("svg") && !inside(own, box, 0.6)) note("outside of its page", element);
      if (element.scrollWidth > element.clientWidth + 1 && element.clientWidth) note("cut off", element);
    }
    if (box.height - padding > TALL && page.querySelectorAll(".block").length > 1) {
      note(`taller than a sheet of Letter, ${box.height - padding}`, page);
    }
  }
  for (const svg of document.querySelectorAll("svg")) {
    const box = svg.getBoundingClientRect();
    const words = [...svg.querySelectorAll("text")];
    const boxes = words.map((one) => one.getBoundingClientRect());
    words.forEach((one, at) => {
      if (!inside(boxes[at], box, 1)) note("words outside of their picture", one);
      for (let other = 0; other < at; other += 1) {
        const [a, b] = [boxes[at], boxes[other]];
        const across = Math.min(a.right, b.right) - Math.max(a.left, b.left);
        const down = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
        // The box of a line has air over and under its letters.
        if (across > 1 && down > 5) note(`words upon "${words[other].textContent}"`, one);
      }
      if (parseFloat(getComputedStyle(one).fontSize) * 0.75 < 14) note("type below 14 points", one);
    });
  }
  // WCAG 2.1, relative luminance and contrast ratio.
  const luminance = (colour) => {
    const [r, g, b] = colour.match(/[\d.]+/g).slice(0, 3).map((part) => {
      const value = part / 255;
      return value <= 0.03928 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const opaque = (colour) => colour && colour !== "none" && !/, 0\)$/.test(colour);
  const paperOf = (element) => {
    const svg = element.closest("svg");
    if (svg) return getComputedStyle(svg.querySelector(".paper")).fill;
    for (let at = element; at; at = at.parentElement) {
      const colour = getComputedStyle(at).backgroundColor;
      if (opaque(colour)) return colour;
    }
    return "rgb(255, 255, 255)";
  };
  let least = 99;
  for (const element of document.querySelectorAll(".page *")) {
    const own = [...element.childNodes].some((node) => node.nodeType === 3 && node.data.trim());
    if (!own || element.tagName === "title") continue;
    const style = getComputedStyle(element);
    const ink = element.closest("svg") ? style.fill : style.color;
    const [one, other] = [luminance(ink), luminance(paperOf(element))];
    const contrast = (Math.max(one, other) + 0.05) / (Math.min(one, other) + 0.05);
    least = Math.min(least, contrast);
    if (contrast < 4.5) note(`contrast ${contrast.toFixed(2)}`, element);
    if (!element.closest("svg") && parseFloat(style.fontSize) * 0.75 < 14) note("type below 14 points", element);
  }
  const out = document.createElement("pre");
  out.id = "measured";
  const pages = document.querySelectorAll(".page").length;
  const scheme = getComputedStyle(document.body).backgroundColor;
  out.textContent = [`measured ${pages} pages on ${scheme}, least contrast ${least.toFixed(2)}`, ...wrong].join("\n");
  document.body.replaceChildren(out);
});
