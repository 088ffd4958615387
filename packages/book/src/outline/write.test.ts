import { execFileSync } from "node:child_process";
import { existsSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { FaultLog } from "../fault-log.ts";
import type { Outline } from "./outline.ts";
import { readOutline } from "./read.ts";
import { writeOutline } from "./write.ts";

const micro = fc.integer({ min: -500_000, max: 500_000 }).map((n) => (n === 0 ? 0 : n / 1000));

/** A star-shaped ring about a point, anticlockwise, with corners on whole micrometres. */
const ring = fc
  .tuple(micro, micro, fc.array(fc.integer({ min: 50, max: 400 }), { minLength: 3, maxLength: 9 }))
  .map(([x, y, radii]) =>
    radii.map((r, i) => {
      const angle = (2 * Math.PI * i) / radii.length;
      return {
        xMm: Math.round((x + r * Math.cos(angle)) * 1000) / 1000 + 0,
        yMm: Math.round((y + r * Math.sin(angle)) * 1000) / 1000 + 0,
      };
    }),
  );

describe.each(["a.svg", "a.dxf"])("%s", (name) => {
  test("an outline that the program made is drawn and read back the same", () => {
    fc.assert(
      fc.property(ring, (corners) => {
        const log = new FaultLog();
        const back = readOutline(name, writeOutline(name, { rings: [corners] }), log);
        expect(log.list()).toEqual([]);
        expect(back?.rings).toHaveLength(1);
        back?.rings[0]?.forEach((p, i) => {
          expect(Math.abs(p.xMm - (corners[i]?.xMm ?? 0))).toBeLessThan(1e-9);
          expect(Math.abs(p.yMm - (corners[i]?.yMm ?? 0))).toBeLessThan(1e-9);
        });
      }),
      { seed: 5, numRuns: 100 },
    );
  });

  test("an outline whose corner is the origin keeps it", () => {
    const corners = [
      { xMm: 0, yMm: -10 },
      { xMm: 5, yMm: -10 },
      { xMm: 5, yMm: 0 },
      { xMm: 0, yMm: 0 },
    ];
    expect(readOutline(name, writeOutline(name, { rings: [corners] }), new FaultLog())?.rings).toEqual([
      corners,
    ]);
  });
});

test("a drawing that came from a file is that file", () => {
  const outline: Outline = { rings: [], source: "any text" };
  expect(writeOutline("a.dxf", outline)).toBe("any text");
});

const PYTHON = "/usr/bin/python3";
const hasEzdxf = existsSync(PYTHON) && existsSync("/usr/lib/python3/dist-packages/ezdxf");

test.skipIf(!hasEzdxf)("ezdxf reads the DXF that is written, and its audit is clean", () => {
  const folder = mkdtempSync(join(tmpdir(), "outline-"));
  try {
    const rings = [
      [
        { xMm: 0, yMm: 0 },
        { xMm: 10.5, yMm: 0 },
        { xMm: 10.5, yMm: 7 },
      ],
    ];
    writeFileSync(join(folder, "a.dxf"), writeOutline("a.dxf", { rings }));
    const script =
      "import ezdxf,sys;d=ezdxf.readfile(sys.argv[1]);p=d.modelspace()[0];print(len(d.audit().errors),len(d.audit().fixes),p.dxftype(),p.is_closed,[tuple(v.dxf.location)[:2] for v in p.vertices])";
    const out = execFileSync(PYTHON, ["-c", script, join(folder, "a.dxf")], { encoding: "utf8" });
    expect(out.trim()).toBe("0 0 POLYLINE True [(0.0, 0.0), (10.5, 0.0), (10.5, 7.0)]");
  } finally {
    rmSync(folder, { recursive: true });
  }
});
