import { draftAfter, type SheetLanguage } from "@pinwright/words";
import { describe, expect, it } from "vitest";
import { box } from "./draw.ts";
import { leavesOf } from "./leaves.ts";
import { frameMarks, type Identity } from "./title-block.ts";

const IDENTITY: Identity = {
  ...{ machineId: "heron", sheetId: "hs.a.from-to.en", fileName: "x", documentTitle: "x", owner: "Owner" },
  ...{ documentType: "From-to list", title: "Harness", supplement: "Heron", number: "heron-H1-FT" },
  ...{
    revision: "A",
    date: "2026-03-31",
    creator: "Ann",
    approved: "",
    state: "draft",
    address: "",
    scale: "",
  },
};

/** Texts of a title block, those of its first sheet or of one that follows. */
const texts = (revision: string, language: SheetLanguage, sheet = 1): readonly string[] =>
  leavesOf(
    frameMarks({ ...IDENTITY, revision }, language, box(10, 10, 190, 277), { sheet, of: 2, code: "" }),
  ).flatMap(({ leaf }) => (leaf.kind === "text" ? [leaf.text] : []));

describe("the title block", () => {
  it("says of a draft after which release it is, on every sheet, as the screen does", () => {
    for (const sheet of [1, 2]) {
      expect(texts("A", "en", sheet)).toContain("A");
      expect(texts(draftAfter("A"), "en", sheet)).toContain("draft after A");
      expect(texts(draftAfter("A"), "zh", sheet)).toContain("A 之后的草稿");
      expect(texts(draftAfter(""), "en", sheet)).toContain("draft");
      expect(texts(draftAfter(""), "both", sheet)).toContain("draft · 草稿");
    }
  });

  it("says it in one language where both have no room, and with its mark where neither has", () => {
    expect(texts(draftAfter("A"), "both")).toContain("draft after A");
    expect(texts(draftAfter("prototype-12"), "en")).toContain("prototype-12+");
    for (const revision of [draftAfter("A"), draftAfter("prototype-12")])
      for (const language of ["en", "zh", "both"] as const)
        expect(texts(revision, language).filter((text) => text.endsWith("…"))).toEqual([]);
  });
});
