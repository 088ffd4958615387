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
