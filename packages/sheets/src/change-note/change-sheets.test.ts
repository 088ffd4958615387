import { expect, test } from "vitest";
import { bodyHash } from "../compose/body-hash.ts";
import { leavesOf } from "../compose/leaves.ts";
import { overlaps } from "../compose/overlaps.ts";
import { composeRetrofitKit, type RetrofitKit } from "../retrofit-kit/retrofit-kit.ts";
import { OPTIONS } from "../testing/first-light.ts";
import { type ChangeNote, composeChangeNote, rangesText } from "./change-note.ts";

const ABOUT = {
  machine: { id: "m", labels: { en: "Machine", zh: "机器" }, owner: "Workshop", approved: "" },
  from: "A",
  to: "B",
};
const same = (text: string) => ({ en: text, zh: text });

const NOTE: ChangeNote = {
  ...ABOUT,
  why: "The switch caught the ball.",
  subjects: [
    {
      subject: { en: "Switch 31", zh: "开关 31" },
      sentences: [
        { en: "Switch 31 moved 12 mm to the right.", zh: "开关 31 右移 12 mm。" },
        { en: "Its wire 7-12 is 40 mm longer.", zh: "其导线 7-12 加长 40 mm。" },
      ],
    },
  ],
  sheets: [{ number: "m-H7-PB", title: { en: "Pinboard", zh: "" }, what: "changed", pages: [3, 1, 2, 7] }],
  harnesses: [
    {
      harness: "H7",
      labels: { en: "Deck", zh: "台面" },
      does: { en: "Longer tail.", zh: "" },
      loose: 12,
    },
  ],
  tools: [same("Pinboard 7")],
  units: [{ revision: "A", list: "m-0031 … m-0044" }],
};

const KIT: RetrofitKit = {
  ...ABOUT,
  units: "m-0031 … m-0044",
  stored: same("48 V: 12 J"),
  cautions: [],
  sent: [{ part: "sw.leaf", labels: same("Leaf switch"), orderNumber: "1-204", count: 2, unit: "each" }],
  back: [],
  newWires: [
    {
      number: "7-12",
      colour: same("BN"),
      type: "AWG 22",
      lengthMm: 412.2,
      ends: [
        { place: same("J3-5"), terminal: "crimp 2.5" },
        { place: same("sw.31"), terminal: "" },
      ],
    },
  ],
  oldWires: [],
  steps: [
    { says: (w) => w.off, licensed: false },
    { says: (w) => w.earth, licensed: true },
  ],
};

const textsOf = (document: {
  readonly pages: readonly { readonly marks: Parameters<typeof leavesOf>[0] }[];
}) =>
  document.pages
    .flatMap(({ marks }) => leavesOf(marks))
    .flatMap(({ leaf }) => (leaf.kind === "text" ? [leaf.text] : []));

test("pages in a row are ranges", () => {
  expect(rangesText([3, 1, 2, 7])).toBe("1–3, 7");
  expect(rangesText([2, 1])).toBe("1, 2");
  expect(rangesText([])).toBe("");
});

test.each(["en", "zh", "both"] as const)(
  "both sheets say what they were given, in %s, and nothing overlaps",
  (language) => {
    const options = { ...OPTIONS, language };
    const note = composeChangeNote(NOTE, options);
    const kit = composeRetrofitKit(KIT, options);
    expect(note.id).toBe(`machine.change-note-A-B.${language}`);
    const said = textsOf(note).join(" ");
    for (const text of ["m-H7-PB", "1–3, 7", "m-0031 … m-0044", "12"]) expect(said).toContain(text);
    const told = textsOf(kit).join(" ");
    for (const text of ["1-204", "7-12", "413", "J3-5"]) expect(told).toContain(text);
    expect(told).toContain(language === "zh" ? "持证人员" : "licensed person");
    for (const document of [note, kit])
      for (const page of document.pages) expect(overlaps(page), document.id).toEqual([]);
  },
);

test("a change that asks nothing of a machine in the field says so; a draft is none of its own", () => {
  const none = { ...KIT, sent: [], newWires: [], steps: [], to: null };
  const document = composeRetrofitKit(none, OPTIONS);
  expect(textsOf(document).join(" ")).toContain("Nothing has to be done");
  expect(document.id).toBe("machine.retrofit-kit-A-draft.en");
  expect(document.identity.state).toBe("draft");
  expect(document.bodyHash).toBe(composeRetrofitKit(none, { ...OPTIONS, date: "2027-01-31" }).bodyHash);
  expect(bodyHash(document.pages)).not.toBe("");
});
