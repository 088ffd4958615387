/**
 * Order of two texts by code point: the one order in which ids are sorted and ties are broken everywhere,
 * the same on every computer and in every language setting. Negative when `a` comes first.
 *
 * JavaScript's own `<` compares UTF-16 units, which puts code points above U+FFFF before U+E000 to U+FFFF.
 */
export const compareText = (a: string, b: string): number => {
  const length = Math.min(a.length, b.length);
  for (let i = 0; i < length; i++) {
    const x = a.charCodeAt(i);
    const y = b.charCodeAt(i);
    if (x !== y) return rank(x) - rank(y);
  }
  return a.length - b.length;
};

/** Moves surrogates (U+D800 to U+DFFF) above all other units, so that units compare as their code points do. */
const rank = (unit: number): number => (unit < 0xd800 ? unit : unit < 0xe000 ? unit + 0x2000 : unit - 0x800);
