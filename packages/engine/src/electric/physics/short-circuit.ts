import type { BookRow } from "@pinwright/book";

/** What feeds a short circuit. */
export interface ShortSource {
  readonly volts: number;
  /** Of the whole way, there and back. */
  readonly loopOhm: number;
  readonly limitMode: BookRow<"supplies">["limit_mode"];
  readonly limitA: number | null;
  readonly shortA: number | null;
  readonly burstS: number | null;
  readonly storedJ: number | null;
}

/** A short circuit's current: the discharge of what the supply has stored, then what its limit lets through. */
export interface ShortCurrent {
  /** First current, before any limit acts: volts ÷ loop. */
  readonly firstA: number;
  /** I²t of the stored energy: it turns to heat in the loop, so that it is energy ÷ loop. 0 without a limit. */
  readonly storedA2s: number;
  /** Current after that, and how long it lasts. */
  readonly heldA: number;
  readonly heldS: number;
}

/**
 * Current of a short circuit. A supply without a limit gives volts ÷ loop for ever; one that limits gives at most its
 * limit (`constant`), its current into a short circuit (`fold-back`), or its limit for one burst (`hiccup`, `latch`).
 * The bursts of a hiccup are far apart, so that each is taken by itself. What its capacitors hold comes first.
 */
export function shortCurrent(source: ShortSource): ShortCurrent {
  const firstA = source.volts / source.loopOhm;
  const { limitMode, limitA } = source;
  if (limitMode === "none" || limitA === null || limitA >= firstA)
    return { firstA, storedA2s: 0, heldA: firstA, heldS: Number.POSITIVE_INFINITY };
  const storedA2s = (source.storedJ ?? 0) / source.loopOhm;
  const held = (heldA: number, heldS: number): ShortCurrent => ({ firstA, storedA2s, heldA, heldS });
  switch (limitMode) {
    case "constant":
      return held(limitA, Number.POSITIVE_INFINITY);
    case "fold-back":
      return held(Math.min(firstA, source.shortA ?? 0), Number.POSITIVE_INFINITY);
    default:
      return held(limitA, source.burstS ?? 0);
  }
}

/** What a fuse makes of a short circuit. */
export interface Opening {
  /** Latest time at which it has opened, s; endless when nothing makes it open. */
  readonly opensS: number;
  /** I²t that has passed by then, or by the end of the current; endless when that has none. */
  readonly letThroughA2s: number;
  /** Current that it has to break; 0 when it never opens. */
  readonly breaksA: number;
}

/**
 * How a fuse ends a short circuit. The stored energy alone opens it where that is more than its gates allow it to
 * take at such a current; else the current that is held has to.
 * @param opensWithinS latest opening time of the fuse at a current in A
 * @param meltingA2s least melting I²t: below it the stored energy cannot open the fuse, so that it breaks the held
 * current only
 */
export function openingOf(
  current: ShortCurrent,
  opensWithinS: (amps: number) => number,
  meltingA2s: number,
): Opening {
  const { firstA, storedA2s, heldA, heldS } = current;
  const atFirst = opensWithinS(firstA);
  if (storedA2s > 0 && storedA2s >= firstA ** 2 * atFirst)
    return { opensS: atFirst, letThroughA2s: storedA2s, breaksA: firstA };
  const opensS = heldA > 0 ? opensWithinS(heldA) : Number.POSITIVE_INFINITY;
  const lastsS = Math.min(opensS, heldS);
  const letThroughA2s = storedA2s + (heldA > 0 ? heldA ** 2 * lastsS : 0);
  if (opensS > heldS || !Number.isFinite(opensS))
    return { opensS: Number.POSITIVE_INFINITY, letThroughA2s, breaksA: 0 };
  return { opensS, letThroughA2s, breaksA: storedA2s > meltingA2s || heldA >= firstA ? firstA : heldA };
}
