import type { LineResult, WorkStep } from "@pinwright/engine";
import { expect, test } from "vitest";
import type { SheetDocument } from "../compose/document.ts";
import { composeScrewTrays } from "../screw-tray/screw-tray.ts";
import { composeStepCard } from "../step-cards/step-cards.ts";
import { pageSvg } from "../svg/svg.ts";
import { OPTIONS, woodenLine } from "../testing/first-light.ts";

const known = await woodenLine();

/** A step and a symbol that no other chapter decides: the mechanisms of first-light, screwed on as the book says. */
const STEP: WorkStep = {
  id: "mount",
  number: 1,
  kind: "mount",
  labels: { en: "Mount bumper and saucer", zh: "安装蘑菇与弹出洞" },
  panelId: "pf",
  side: "under",
  itemIds: ["mech.bumper", "mech.saucer"],
  fastenerIds: ["mech.bumper", "mech.saucer"].flatMap((id) => [1, 2, 3, 4].map((n) => `${id}/screw-${n}`)),
  recheckIds: [],
  harnessId: null,
  mechanismTypeId: null,
  times: 1,
  afterIds: [],
  motions: [],
  seconds: 90,
  secondsFrom: "motions",
  skill: "",
  tools: [],
  cautions: [],
  stationId: null,
};
const line: LineResult = {
  ...known,
  fastening: {
    ...known.fastening,
    reaches: new Map(),
    symbols: new Map([
      ["wood-3x10", { typeId: "wood-3x10", letter: "A", shape: "triangle", shade: "solid" }],
    ]),
  },
  steps: { ...known.steps, steps: [STEP], edges: [] },
};

/** First page of a sheet, without the code and its text: they follow the body and are tested where they are read back. */
function drawn(document: SheetDocument | undefined): string {
  const page = document?.pages[0];
  if (document === undefined || page === undefined) throw new Error("the sheet has a page");
  const hash = document.bodyHash.slice(0, 12);
  return pageSvg(page, document.title)
    .replace(/<path d="[^"]*" fill="#16191b" shape-rendering[^>]*>/u, "<code/>")
    .replace(new RegExp(`<text[^>]*>[^<]*${hash}</text>`, "u"), "<hash/>");
}

test("the card of a step", async () => {
  await expect(drawn(composeStepCard(line, STEP, { ...OPTIONS, language: "both" }))).toMatchFileSnapshot(
    "golden/step-card.svg",
  );
});

test("a tray", async () => {
  const [tray] = composeScrewTrays(line, OPTIONS);
  await expect(drawn(tray)).toMatchFileSnapshot("golden/screw-tray.svg");
});
