import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Page } from "playwright-core";

const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const WCAG = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];

/** What axe-core finds on a page against WCAG 2.2 A and AA, one line for each element; nothing is good. */
export async function accessFaults(page: Page): Promise<readonly string[]> {
  await page.evaluate(AXE);
  const found: unknown = await page.evaluate(
    `axe.run(document, { runOnly: ${JSON.stringify(WCAG)}, resultTypes: ["violations"] }).then((result) =>
      result.violations.flatMap(({ id, nodes }) =>
        nodes.map((node) => id + ": " + node.target.join(" ") + " " + node.html.slice(0, 160) +
          " " + (node.any[0]?.message ?? node.all[0]?.message ?? node.none[0]?.message ?? ""))))`,
  );
  return Array.isArray(found) ? found.map(String) : ["axe-core gave no answer"];
}

/** How far a page is wider than its screen, px: a reader would have to push it sideways. */
export async function sidewaysPx(page: Page): Promise<number> {
  const root = "document.documentElement";
  return Number(await page.evaluate(`${root}.scrollWidth - ${root}.clientWidth`));
}
