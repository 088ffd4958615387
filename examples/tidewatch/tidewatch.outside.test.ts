import { execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import { join } from "node:path";
import { emptyShop } from "@pinwright/book";
import { readBook } from "@pinwright/book/io";
import {
  judgeSample,
  lotBlock,
  type Machine,
  OutsideSolver,
  outsideFindings,
  resolveMachine,
  samplesOf,
  sendOutPack,
} from "@pinwright/engine";
import { beforeAll, describe, expect, test } from "vitest";

const folder = import.meta.dirname;
const drawing = (file: string): string => join(folder, "drawings", file);

let machine: Machine;
let drawings: ReadonlyMap<string, Uint8Array>;
let facts: ReadonlyMap<string, { readonly bytes: number; readonly sha256: string }>;

beforeAll(async () => {
  const read = await readBook(folder);
  machine = resolveMachine(read.book, read.shop ?? emptyShop());
  drawings = read.drawings;
  facts = new Map(
    [...drawings].map(([name, bytes]) => [
      name,
      { bytes: bytes.length, sha256: createHash("sha256").update(bytes).digest("hex") },
    ]),
  );
});

test("nothing is wrong with drawings, dimensions and samples", () => {
  expect(new OutsideSolver().solve(machine).findings).toEqual([]);
  expect(outsideFindings(machine, facts)).toEqual([]);
  expect(machine.book.tables.drawings).toHaveLength(drawings.size);
});

test("every drawn part can be sent out, each with its own drawing", () => {
  const ids = [...new Set(machine.book.tables.drawings.map((row) => row.part))];
  expect(ids).toHaveLength(6);
  const pack = sendOutPack(
    machine,
    ids.map((partId) => ({ partId, quantity: 25 })),
    facts,
  );
  expect(pack.faults).toEqual([]);
  const plate = pack.parts.find(({ partId }) => partId === "br.flipper-plate-left");
  expect(plate?.drawings.map(({ row }) => row.file)).toEqual([
    "flipper-plate-left-b.dxf",
    "flipper-plate-left-b.pdf",
  ]);
});

test("samples go from the first try to the final part, and hold back the lots that they should", () => {
  expect(samplesOf(machine, "br.flipper-plate-left").map(({ made, state }) => [made, state])).toEqual([
    ["laser-cut acrylic", "approved"],
    ["final metal, plated", "sent-back"],
    ["final metal, plated", "approved"],
  ]);
  expect(judgeSample(machine, "sm.flipper-plate.b-1")?.verdict).toBe("pass");
  // 7.96 is below 8 h7.
  expect(judgeSample(machine, "sm.flipper-shaft.a-1")?.verdict).toBe("fail");
  const blocks = machine.book.tables.drawings.map(({ part }) => [part, lotBlock(machine, part)]);
  expect(Object.fromEntries(blocks)).toEqual({
    "br.bumper-armature": null,
    "br.flipper-plate-left": null,
    "md.flipper-bat": "received",
    "top.plastic-sling-left": null,
    "tu.flipper-shaft": "asked",
    "tu.plunger-12x62": "no-sample",
  });
});

test("holes of the flipper plate are where the mechanism has its screws and the bat its shaft", () => {
  const { mechanism_fasteners, mechanism_devices } = machine.book.tables;
  const screws = mechanism_fasteners
    .filter((row) => row.mechanism_type === "mt.flipper-left")
    .map(({ x_mm, y_mm }) => [x_mm + 60, y_mm + 30]);
  const bat = mechanism_devices.find(
    (row) => row.mechanism_type === "mt.flipper-left" && row.child === "bat",
  );
  const script = [
    "import ezdxf,json,sys",
    "d=ezdxf.readfile(sys.argv[1])",
    "a=d.audit()",
    "c=[[round(v,3) for v in list(e.dxf.center)[:2]]+[2*e.dxf.radius] for e in d.modelspace().query('CIRCLE')]",
    "print(json.dumps([len(a.errors)+len(a.fixes),d.units,sorted(c)]))",
  ].join("\n");
  const args = ["-c", script, drawing("flipper-plate-left-b.dxf")];
  const [faults, units, circles] = JSON.parse(execFileSync("/usr/bin/python3", args, { encoding: "utf8" }));
  expect([faults, units]).toEqual([0, 4]);
  const expected = [...screws.map((at) => [...at, 4.5]), [(bat?.x_mm ?? 0) + 60, (bat?.y_mm ?? 0) + 30, 13]];
  expect(circles).toEqual(expected.sort((a, b) => (a[0] ?? 0) - (b[0] ?? 0) || (a[1] ?? 0) - (b[1] ?? 0)));
});

test("every PDF names its part, its revision and its balloons", () => {
  for (const { part, revision, file } of machine.book.tables.drawings) {
    if (!file.endsWith(".pdf")) continue;
    const text = execFileSync("pdftotext", ["-layout", drawing(file), "-"], { encoding: "utf8" });
    expect(text).toContain(part);
    expect(text).toMatch(new RegExp(`\\b${revision}\\b`));
    const marks = machine.book.tables.dimensions.filter((row) => row.part === part).map(({ mark }) => mark);
    for (const mark of marks) expect(text).toMatch(new RegExp(`(^|\\s)${mark}(\\s|$)`, "m"));
  }
});

describe("the STEP model", () => {
  const instances = (): ReadonlyMap<string, string> => {
    const text = new TextDecoder().decode(drawings.get("bumper-armature-a.step"));
    expect(text).toMatch(/^ISO-10303-21;\nHEADER;\nFILE_DESCRIPTION\(/);
    expect(text).toMatch(/ENDSEC;\nEND-ISO-10303-21;\n$/);
    return new Map(
      [...text.matchAll(/^(#\d+)=(.*);$/gm)].map(([, name = "", entity = ""]) => [name, entity]),
    );
  };

  test("speaks only of instances that are there, each once", () => {
    const all = instances();
    expect(all.size).toBeGreaterThan(150);
    for (const entity of all.values())
      for (const [reference] of entity.matchAll(/#\d+/g)) expect(all.has(reference)).toBe(true);
  });

  test("uses the names that ISO 10303-41 and -42 give", () => {
    // As Open CASCADE 7.8 writes them into a file of its own; it reads this model as one solid of 2290.578 mm³.
    const known = [
      ..."ADVANCED_BREP_SHAPE_REPRESENTATION ADVANCED_FACE APPLICATION_CONTEXT APPLICATION_PROTOCOL_DEFINITION".split(
        " ",
      ),
      ..."AXIS2_PLACEMENT_3D CARTESIAN_POINT CIRCLE CLOSED_SHELL CYLINDRICAL_SURFACE DIRECTION EDGE_CURVE".split(
        " ",
      ),
      ..."EDGE_LOOP FACE_BOUND FACE_OUTER_BOUND LINE MANIFOLD_SOLID_BREP ORIENTED_EDGE PLANE PRODUCT".split(
        " ",
      ),
      ..."PRODUCT_CONTEXT PRODUCT_DEFINITION PRODUCT_DEFINITION_CONTEXT PRODUCT_DEFINITION_FORMATION".split(
        " ",
      ),
      ..."PRODUCT_DEFINITION_SHAPE PRODUCT_RELATED_PRODUCT_CATEGORY SHAPE_DEFINITION_REPRESENTATION".split(
        " ",
      ),
      ..."UNCERTAINTY_MEASURE_WITH_UNIT VECTOR VERTEX_POINT".split(" "),
    ];
    const names = [...instances().values()].flatMap((entity) => /^([A-Z0-9_]+)\(/.exec(entity)?.[1] ?? []);
    expect([...new Set(names)].sort()).toEqual(known.sort());
  });

  test("is closed: every edge bounds two faces, once each way", () => {
    const uses = new Map<string, string[]>();
    for (const entity of instances().values()) {
      const [, edge = "", way = ""] = /^ORIENTED_EDGE\('',\*,\*,(#\d+),(\.[TF]\.)\)$/.exec(entity) ?? [];
      if (edge !== "") uses.set(edge, [...(uses.get(edge) ?? []), way]);
    }
    // 4 corners give 12 edges, 3 holes two circles and a seam each.
    expect(uses.size).toBe(12 + 9);
    for (const ways of uses.values()) expect(ways.sort()).toEqual([".F.", ".T."]);
    const faces = [...instances().values()].filter((entity) => entity.startsWith("ADVANCED_FACE("));
    expect(faces).toHaveLength(6 + 3);
  });
});
