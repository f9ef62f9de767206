// SPDX-License-Identifier: MIT
// Two families of letters that scripts/setup.sh installs, as far apart in width as common ones are, and what is wrong
// with words in pictures.
import { existsSync } from "node:fs";

export const NARROW = "Liberation Sans", WIDE = "DejaVu Sans"; // the first as wide as the common grotesques, the second a sixth wider
const FILES = { [NARROW]: "liberation/LiberationSans-Regular.ttf", [WIDE]: "dejavu/DejaVuSans.ttf" };

export const installed = (family) => existsSync(`/usr/share/fonts/truetype/${FILES[family]}`);

/*
 * Sent to the browser as its text: how many words were looked at, those that leave their picture, and pairs that lie
 * on one another, by their boxes. A box has room above and below the letters: a fifth of its height may be shared.
 */
export const textsOf = (pictures) => {
  const outside = [], covered = [];
  let looked = 0;
  for (const svg of pictures) {
    const s = svg.getBoundingClientRect();
    const words = [...svg.querySelectorAll("text")].filter((t) => t.textContent.trim() && t.checkVisibility())
      .map((t) => ({ text: t.textContent, r: t.getBoundingClientRect() }));
    looked += words.length;
    for (const { text, r } of words)
      if (r.left < s.left - 1 || r.right > s.right + 1 || r.top < s.top - 1 || r.bottom > s.bottom + 1) outside.push(text);
    for (let i = 0; i < words.length; i++)
      for (let k = i + 1; k < words.length; k++) {
        const a = words[i].r, b = words[k].r, share = 0.2 * Math.min(a.height, b.height, a.width, b.width);
        const w = Math.min(a.right, b.right) - Math.max(a.left, b.left);
        const h = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
        if (w > Math.max(1, share) && h > Math.max(1, share)) covered.push(`${words[i].text} | ${words[k].text}`);
      }
  }
  return { looked, outside, covered };
};
