import { readFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { call, example, Place } from "./testing/calls.ts";

const place = new Place();
afterAll(() => place.clear());
const copyWith: Place["copyWith"] = (name, changes) => place.copyWith(name, changes);

/** Column and row of the six switches: neighbours far from each other. */
const CROSSINGS: Readonly<Record<string, readonly [number, number]>> = {
  "sw.left": [4, 1],
  "sw.far-left": [5, 2],
  "sw.top": [6, 3],
  "sw.right": [4, 2],
  "mech.bumper/switch": [5, 1],
  "mech.saucer/switch": [6, 1],
};

/** The small example with its six switches in a matrix: nets `switch.4` to `.6` are columns, `.1` to `.3` rows. */
const withMatrix = (name: string): string =>
  copyWith(name, {
    "elements.csv": (text) =>
      text
        .replace(/^(el\.1[345],,io,,input,j2\.\d),j2\.7,/gmu, "$1,j1.2,")
        .replace(
          /^(el\.1[678],,io,,)input,(j2\.\d),j2\.7,(s\d),,,,,,,,,$/gmu,
          "$1driver,$2,j1.2,$3,,,,,,0.05,,,",
        ),
    "ends.csv": (text) =>
      text
        .split("\n")
        .flatMap((line) => {
          const [point = "", net, harness] = line.split(",");
          const [item = "", terminal] = point.split(":");
          const crossing = CROSSINGS[item];
          if (crossing !== undefined)
            return [`${point},switch.${crossing[terminal === "com" ? 0 : 1]},${harness},`];
          return net === "switch.common" ? [] : [line];
        })
        .join("\n"),
  });

describe("map", () => {
  it("writes every point as CSV, each row with the version of the map", async () => {
    const { status, out, err } = await call("map", example);
    expect(status).toBe(0);
    const [head = "", ...rows] = out.trim().split("\n");
    expect(head).toMatch(
      /^device,label,label_zh,number,element,board,address,terminated,connector,pin,kind,point/,
    );
    expect(rows).toHaveLength(12);
    const version = /version ([0-9a-f]{64})/.exec(err)?.[1] ?? "";
    for (const row of rows) expect(row.endsWith(`,${version}`)).toBe(true);
    expect(rows.find((row) => row.startsWith("mech.bumper/coil,"))).toMatch(
      /,bd\.io,1,no,j4,1,driver,c1,low,,,30,150,,,80,24,bd\.driver,/,
    );
  });

  it("has the same version in JSON and in a file, and another after a change", async () => {
    const json = JSON.parse((await call("map", example, "--json")).out);
    expect(json.points).toHaveLength(12);
    const file = join(place.path, "map.csv");
    expect((await call("map", example, "--out", file)).out).toBe("");
    expect(readFileSync(file, "utf8")).toContain(json.version);
    const other = copyWith("pulse", { "activity.csv": (text) => text.replace(",30,150,", ",31,150,") });
    expect((await call("map", other)).out).not.toContain(json.version);
  });

  it("tells what a point is not able to do", async () => {
    const weak = copyWith("weak", {
      "elements.csv": (text) => text.replace("j2.1,,,,,,5,,,\n", "j2.1,,,,,,0.5,,,\n"),
    });
    const { status, err } = await call("map", weak);
    expect(status).toBe(1);
    expect(err).toMatch(
      /error driver-amps: bd\.driver:j3\.2 switches 0\.5 A; what hangs on it \(1\) draws 2\.1 A/,
    );
  });
});

describe("matrix", () => {
  it("says when a book has none", async () => {
    const { status, out } = await call("matrix", example);
    expect(status).toBe(0);
    expect(out).toBe("The book has no switch matrix.\n");
  });

  it("shows ghosts and moves, writes only when told, and then leaves nothing to move", async () => {
    const folder = withMatrix("matrix");
    const ends = (): string => readFileSync(join(folder, "ends.csv"), "utf8");
    const before = ends();
    const shown = await call("matrix", folder);
    expect(shown.status).toBe(0);
    expect(shown.out).toMatch(/bd\.io: 3 columns × 3 rows, 6 switches/);
    expect(shown.out).toMatch(/no diode at /);
    expect(shown.out).toMatch(/wire of its lines \d\.\d\d m → \d\.\d\d m; nothing is below/);
    expect(shown.err).toMatch(/--write takes this/);
    expect(ends()).toBe(before);
    const three = await call("matrix", folder, "--closed", "sw.left,sw.right,sw.far-left");
    expect(three.out).toBe("bd.io: 3 closed, 1 more read closed\n  switch.5 switch.1: mech.bumper/switch\n");
    expect((await call("matrix", folder, "--write")).status).toBe(0);
    expect(ends()).not.toBe(before);
    expect(readFileSync(join(folder, "devices.csv"), "utf8")).toBe(
      readFileSync(join(example, "devices.csv"), "utf8"),
    );
    expect((await call("matrix", folder)).out).toMatch(/ 0 switches move, 0 ends change/);
  }, 60_000);

  it("refuses a matrix that is not there", async () => {
    expect((await call("matrix", withMatrix("other"), "--matrix", "bd.x")).err).toMatch(
      /--matrix bd\.x: the book has bd\.io/,
    );
  });
});
