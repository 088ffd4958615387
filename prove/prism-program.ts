import {
  convexPieces,
  fromFrame3,
  type Point3Mm,
  type RingMm,
  ringSides,
  rotateXyz,
} from "@pinwright/kernel";
import loadHighs from "highs";
import { nearSolid, uprightOf } from "../packages/engine/src/fastening/clash/meeting.ts";
import { rigidBetween } from "../packages/engine/src/fastening/clash/rigid.ts";
import { type RandomPrism, randomPrisms } from "../packages/engine/src/fastening/testing/layouts.ts";

/** A half-space n·x ≤ c with n of length 1. */
interface Half {
  readonly n: Point3Mm;
  readonly c: number;
}

/** Prisms that share less than a ball of this radius, or lie this near, may be judged either way, mm. */
const BORDER_MM = 1e-4;

function halfSpaces(piece: RingMm, { lowMm, highMm, frame }: RandomPrism): readonly Half[] {
  const half = (n: Point3Mm, at: Point3Mm): Half => {
    const turned = rotateXyz(n, frame.rxDeg, frame.ryDeg, frame.rzDeg);
    const p = fromFrame3(frame, at);
    return { n: turned, c: turned.xMm * p.xMm + turned.yMm * p.yMm + turned.zMm * p.zMm };
  };
  const sides = ringSides(piece).map(({ a, b }) => {
    const lengthMm = Math.hypot(b.xMm - a.xMm, b.yMm - a.yMm);
    const n = { xMm: (b.yMm - a.yMm) / lengthMm, yMm: (a.xMm - b.xMm) / lengthMm, zMm: 0 };
    return half(n, { ...a, zMm: 0 });
  });
  return [
    ...sides,
    half({ xMm: 0, yMm: 0, zMm: 1 }, { xMm: 0, yMm: 0, zMm: highMm }),
    half({ xMm: 0, yMm: 0, zMm: -1 }, { xMm: 0, yMm: 0, zMm: lowMm }),
  ];
}

type Highs = Awaited<ReturnType<typeof loadHighs>>;

const signed = (value: number): string => `${value < 0 ? "-" : "+"} ${Math.abs(value).toFixed(12)}`;

/** Radius of the largest ball in all the half-spaces; less than 0 when they have no point in common. */
function ballRadius(highs: Highs, halves: readonly Half[]): number {
  const rows = halves.map(
    ({ n, c }, i) =>
      ` r${i}: ${signed(n.xMm)} x ${signed(n.yMm)} y ${signed(n.zMm)} z + 1 t <= ${c.toFixed(12)}`,
  );
  const text = [
    "Maximize",
    " obj: t",
    "Subject To",
    ...rows,
    "Bounds",
    " x free",
    " y free",
    " z free",
    " -1000 <= t <= 1000",
    "End",
    "",
  ].join("\n");
  const solved = highs.solve(text);
  if (solved.Status !== "Optimal") throw new Error(`the program of a ball is ${solved.Status}`);
  return solved.ObjectiveValue;
}

/** Judges pairs of prisms by their shadows, and by linear programs over their half-spaces. */
export async function comparePrisms(count: number): Promise<Readonly<Record<string, number>>> {
  const highs = await loadHighs();
  let meeting = 0;
  let border = 0;
  let different = 0;
  let programs = 0;
  for (let seed = 1; seed <= count; seed++) {
    const [a, b] = randomPrisms(seed);
    let radiusMm = Number.NEGATIVE_INFINITY;
    for (const pieceA of convexPieces(a.ring))
      for (const pieceB of convexPieces(b.ring)) {
        programs++;
        radiusMm = Math.max(
          radiusMm,
          ballRadius(highs, [...halfSpaces(pieceA, a), ...halfSpaces(pieceB, b)]),
        );
      }
    if (Math.abs(radiusMm) < BORDER_MM) {
      border++;
      continue;
    }
    const near = nearSolid(a, uprightOf(b), rigidBetween(a.frame, b.frame), BORDER_MM / 10);
    if (radiusMm > 0) meeting++;
    if (radiusMm > 0 !== (near !== null)) different++;
  }
  return { count, programs, meeting, border, different };
}
