import type { Page } from "playwright-core";
import type { Spot } from "./fingers.ts";

/** Middle of what is selected on the drawing. */
export async function chosenSpot(page: Page): Promise<Spot> {
  const chosen = page.locator(".drawing .chosen").first();
  await chosen.waitFor({ state: "attached" });
  const box = await chosen.boundingBox();
  if (box === null) throw new Error("What is selected is not on the drawing.");
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

/** Ids that the address says are selected. */
export const selectedIds = (page: Page): readonly string[] => new URL(page.url()).searchParams.getAll("id");

/** Where a place of the shown panel is on the page, measured by its outline, which begins at its origin. */
export async function panelView(
  page: Page,
  side: "top" | "under",
  { widthMm, heightMm }: { readonly widthMm: number; readonly heightMm: number },
): Promise<(xMm: number, yMm: number) => Spot> {
  const box = await page.locator(".drawing .panel").boundingBox();
  if (box === null) throw new Error("There is no panel on the drawing.");
  const [kx, ky] = [box.width / widthMm, box.height / heightMm];
  return (xMm, yMm) => ({
    x: side === "under" ? box.x + box.width - xMm * kx : box.x + xMm * kx,
    y: box.y + box.height - yMm * ky,
  });
}
