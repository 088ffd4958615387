/**
 * Pictures of every section of the app, to be looked at: `tsx tools/screenshots.ts [FOLDER] [PART-OF-A-NAME …]`.
 * On a desktop in light and dark, English and Chinese; on a tablet and a phone in English and Chinese.
 */
import { mkdir } from "node:fs/promises";
import { join } from "node:path";
import { argv, stdout } from "node:process";
import {
  goTo,
  look,
  openBook,
  openBrowser,
  type Screen,
} from "../packages/web/src/browser/testing/browser.ts";
import { startApp } from "../packages/web/src/browser/testing/start-app.ts";

const [folder = "out/screenshots", ...wanted] = argv.slice(2);

/** Places of Tidewatch, by the name of their pictures. */
const PLACES: Readonly<Record<string, string>> = {
  layout: "layout",
  "layout-item": "layout?id=sw.inlane-left",
  wiring: "wiring",
  "wiring-board": "wiring?id=bd.switch-cab:j1",
  "wiring-net": "wiring?id=coil.1f",
  supplies: "wiring/currents/supplies",
  supply: "wiring/currents/supplies?id=sup.48",
  fuses: "wiring/currents/fuses",
  fuse: "wiring/currents/fuses?id=fu.dist48.f1",
  conductors: "wiring/currents/conductors",
  loads: "wiring/currents/loads",
  coils: "wiring/currents/coils",
  ladder: "wiring/currents/ladder?id=sup.48",
  "ladder-net": "wiring/currents/ladder?id=coil.1f",
  harnesses: "harnesses",
  harness: "harnesses/hs.switch-front",
  screws: "screws/playfield/under",
  "screws-step": "screws/playfield/under?step=mount:mech.drops",
  "screws-lamps": "screws/playfield/under?step=devices:playfield:under:lamp:ft.wood-30x12:2.1",
  "screws-screw": "screws/playfield/under?step=mount:mech.drops&id=mech.drops/fx-1",
  bench: "screws/bench/all/95",
  "bench-mechanism": "screws/bench/all/7",
  steps: "steps",
  "steps-table": "steps/table",
  "steps-learning": "steps/learning",
  boards: "boards",
  board: "boards/bt.switch16",
  solder: "boards/solder",
  panels: "panels",
  cutting: "panels/cutting",
  fits: "panels/fits",
  paint: "panels/paint",
  parts: "parts",
  "make-or-buy": "parts/ways",
  stock: "parts/stock",
  outside: "parts/outside",
  runs: "runs",
  run: "runs/run.spring",
  findings: "findings",
  "findings-accepted": "findings?show=accepted",
  tables: "tables",
  "tables-devices": "tables/devices",
  sheets: "sheets",
  history: "history",
};
/** Places outside of a book. */
const OUTSIDE: Readonly<Record<string, string>> = { start: "/", people: "/people", "set-up": "/set-up" };

interface Variant {
  readonly language: "en" | "zh";
  readonly scheme: "light" | "dark";
}
const ALL: readonly Variant[] = (["en", "zh"] as const).flatMap((language) =>
  (["light", "dark"] as const).map((scheme) => ({ language, scheme })),
);
const LIGHT = ALL.filter(({ scheme }) => scheme === "light");

const isWanted = (name: string): boolean => wanted.length === 0 || wanted.some((part) => name.includes(part));

const app = await startApp();
const browser = await openBrowser();
try {
  await mkdir(folder, { recursive: true });
  const screens: readonly (readonly [Screen, readonly Variant[]])[] = [
    ["desktop", ALL],
    ["tablet", LIGHT],
    ["tablet upright", LIGHT.slice(0, 1)],
    ["phone", LIGHT],
  ];
  for (const [screen, variants] of screens) {
    for (const { language, scheme } of variants) {
      const places = [
        ...Object.entries(PLACES).map(([name, path]) => [name, `/b/tidewatch/${path}`] as const),
        ...Object.entries(OUTSIDE),
      ]
        .map(([name, path]) => ({
          name: `${name}.${screen.replace(" ", "-")}.${language}.${scheme}.png`,
          path,
        }))
        .filter(({ name }) => isWanted(name));
      if (places.length === 0) continue;
      const { page, context } = await look(browser, app.address, { language, scheme, screen });
      await openBook(page, "/b/tidewatch/findings");
      for (const { name, path } of places) {
        await goTo(page, path);
        await page.screenshot({ path: join(folder, name) });
        stdout.write(`${join(folder, name)}\n`);
      }
      await context.close();
    }
  }
} finally {
  await browser.close();
  await app.stop();
}
