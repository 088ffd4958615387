import { describe, expect, it } from "vitest";
import { createMachine, type SomeTables } from "../../testing/book.ts";
import { type Draft, emptyDraft } from "./draft.ts";
import { withTitles } from "./titles.ts";

const tables: SomeTables = {
  panels: [
    { id: "field", label: "Field", purpose: "playfield", width_mm: 300, height_mm: 900, thickness_mm: 12 },
  ],
  device_types: [{ id: "lamp", class: "lamp", width_mm: 5, depth_mm: 5, height_mm: 5 }],
  devices: Array.from({ length: 20 }, (_, i) => ({
    id: `lp.${String(i).padStart(2, "0")}`,
    label: `Lamp ${i}`,
    type: "lamp",
    panel: "field",
    side: "under" as const,
    x_mm: 10 + (i % 4) * 5,
    y_mm: 20 + Math.floor(i / 4) * 200,
  })),
};
const machine = createMachine(tables);

const group = (id: string, items: readonly number[]): Draft => ({
  ...emptyDraft("devices", id, { en: "", zh: "" }),
  panelId: "field",
  side: "under",
  itemIds: items.map((i) => `lp.${String(i).padStart(2, "0")}`),
});
const titles = (...drafts: readonly Draft[]): readonly string[] =>
  withTitles(machine, drafts).map(({ labels }) => labels.en);

describe("names of derived steps", () => {
  it("is that of the panel side when there is only one", () => {
    expect(titles(group("devices:field:under:lamp", [0, 1, 2]))).toEqual(["Lamps: Field, underside"]);
  });

  it("names few things, and tells where many are", () => {
    expect(
      titles(
        group("devices:field:under:lamp:1", [0, 1, 2, 3, 4]),
        group("devices:field:under:lamp:2", [16, 17]),
        group("devices:field:under:lamp:2~2", [12, 13, 14, 15, 18]),
      ),
    ).toEqual([
      "Lamps: Field, underside, front, player's left",
      "Lamps: Lamp 16; Lamp 17",
      "Lamps: Field, underside, rear, player's left",
    ]);
  });

  it("numbers what is still alike, whatever the order of the steps", () => {
    const a = group("devices:field:under:lamp:1", [0, 1, 2, 3, 4]);
    const b = group("devices:field:under:lamp:2", [5, 6, 7, 0, 1]);
    expect(titles(b, a)).toEqual([
      "Lamps: Field, underside, front, player's left (2 of 2)",
      "Lamps: Field, underside, front, player's left (1 of 2)",
    ]);
  });

  it("leaves other steps as they are", () => {
    const own = emptyDraft("own", "st.1", { en: "Turn it", zh: "翻转" });
    expect(withTitles(machine, [own])).toEqual([own]);
  });
});
