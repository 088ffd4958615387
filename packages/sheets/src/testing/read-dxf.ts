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
doc = ezdxf.readfile(sys.argv[1])
audit = doc.audit()
msp = doc.modelspace()
circles = [[e.dxf.layer, e.dxf.center.x, e.dxf.center.y, e.dxf.radius] for e in msp.query("CIRCLE")]
outlines = [[e.dxf.layer, [[p[0], p[1]] for p in e.get_points("xy")]] for e in msp.query("LWPOLYLINE") if e.closed]
print(json.dumps(dict(errors=len(audit.errors), fixes=len(audit.fixes), units=doc.units,
  layers=sorted(l.dxf.name for l in doc.layers), circles=circles, outlines=outlines)))
`;

/** Reads a DXF file back with another library. */
export function readDxf(path: string): ReadDxf {
  return JSON.parse(
    execFileSync("/usr/bin/python3", ["-c", READ, path], { encoding: "utf8", maxBuffer: 1 << 28 }),
  );
}
