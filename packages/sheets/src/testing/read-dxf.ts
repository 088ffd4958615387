import { execFileSync } from "node:child_process";

/** What Debian's ezdxf makes of a DXF file. */
export interface ReadDxf {
  readonly errors: number;
  readonly fixes: number;
  /** 4: millimetres. */
  readonly units: number;
  readonly layers: readonly string[];
  /** Layer, centre and radius, mm. */
  readonly circles: readonly (readonly [layer: string, xMm: number, yMm: number, radiusMm: number])[];
  /** Layer and corners of closed outlines. */
  readonly outlines: readonly (readonly [
    layer: string,
    corners: readonly (readonly [xMm: number, yMm: number])[],
  ])[];
}

const READ = `
import json, sys, ezdxf
def read(path):
    doc = ezdxf.readfile(path)
    audit = doc.audit()
    msp = doc.modelspace()
    circles = [[e.dxf.layer, e.dxf.center.x, e.dxf.center.y, e.dxf.radius] for e in msp.query("CIRCLE")]
    outlines = [[e.dxf.layer, [[p[0], p[1]] for p in e.get_points("xy")]]
                for e in msp.query("LWPOLYLINE") if e.closed]
    return dict(errors=len(audit.errors), fixes=len(audit.fixes), units=doc.units,
                layers=sorted(l.dxf.name for l in doc.layers), circles=circles, outlines=outlines)
print(json.dumps([read(path) for path in json.load(sys.stdin)]))
`;

/** Reads DXF files back with another library. */
export function readDxfs(paths: readonly string[]): readonly ReadDxf[] {
  return JSON.parse(
    execFileSync("/usr/bin/python3", ["-c", READ], {
      encoding: "utf8",
      input: JSON.stringify(paths),
      maxBuffer: 1 << 28,
    }),
  );
}

/** Reads a DXF file back with another library. */
export function readDxf(path: string): ReadDxf {
  const [read] = readDxfs([path]);
  if (read === undefined) throw new Error(`ezdxf gave no answer for ${path}`);
  return read;
}
