import { expect, test } from "vitest";
import { cautionsOf, machineCautions } from "./cautions.ts";
import { HARNESS_SHEET_KINDS } from "./identity.ts";
import { exampleLine } from "./testing/first-light.ts";

const line = await exampleLine("tidewatch");
const supplies = new Map(line.machine.book.tables.supplies.map((s) => [s.id, s]));

/** IEC 60335-1 clause 8.1.4. */
const SAFE_DC_V = 42.4;

test("every sheet of a harness says what is dangerous about its wires", () => {
  const seen = new Set<string>();
  for (const harness of line.harnesses.values()) {
    const { wires } = harness;
    const own = wires.map((w) => ({ w, supply: supplies.get(line.machine.nets.get(w.netId)?.supply ?? "") }));
    const hazards: Record<string, boolean> = {
      "carries mains voltage": wires.some((w) => w.netClass === "mains"),
      "above 42.4 V DC": own.some(
        ({ w, supply }) => w.netClass === "coil" && (supply?.volts ?? 0) > SAFE_DC_V,
      ),
      "Stored charge": own.some(({ w, supply }) => (supply?.stored_j ?? 0) > 0 || w.netClass === "mains"),
      "Protective earth": wires.some((w) => w.netClass === "earth"),
    };
    for (const kind of HARNESS_SHEET_KINDS) {
      const said = cautionsOf(line, harness, kind, "en").join("\n");
      for (const [text, is] of Object.entries(hazards)) {
        expect(said.includes(text), `${harness.harness.id} ${kind}: ${text}`).toBe(is);
        if (is) seen.add(text);
      }
      if (said.includes("Stored charge")) expect(said).toMatch(/licensed electrician/u);
    }
  }
  expect(seen.size).toBe(4);
});

test("sheets of the machine name every coil supply and every stored charge with its energy", () => {
  const said = machineCautions(line, "both").join("\n");
  expect(said).toContain("Mains is inside");
  expect(said).toContain("机内有市电");
  for (const s of supplies.values()) {
    if ((s.stored_j ?? 0) > 0) {
      expect(said).toContain(`: ${s.stored_j} J`);
      expect(said).toContain(s.label);
      expect(said).toContain(s.label_zh);
    }
  }
  expect(said).toContain("Motor supply 12 V: 0.3 J");
  // Whose name says its volts is not told them twice.
  expect(said).toContain("Bus 12 V: 0.02 J");
  expect(said).toMatch(/Coil supply 48 V: above 42\.4 V DC/u);
  expect(said).toMatch(/capacitors of the mains filter/u);
});
