import type { PaintPlan } from "@pinwright/engine";
import type { SheetLanguage } from "@pinwright/words";
import { at, box, LINE, rect, line as stretch, stroke, TEXT, write } from "../compose/draw.ts";
import type { Block } from "../compose/flow.ts";
import type { Mark, PolygonMark } from "../compose/mark.ts";
import { say } from "../compose/say.ts";

const DAY_HOURS = 24;
const LEFT_MM = 12;
const ROW_MM = 5.5;
const BAR_MM = 3.6;
const HEAD_MM = 5;
/** Names of days stand this far apart at least. */
const NAME_MM = 8;

/** Batches as bars over days: painting black, drying hatched. */
export function rackChart(plan: PaintPlan, language: SheetLanguage, widthMm: number): Block {
  const days = Math.max(1, Math.ceil(plan.endHour / DAY_HOURS - 1e-9));
  const hourMm = (widthMm - LEFT_MM) / (days * DAY_HOURS);
  const x = (hour: number): number => LEFT_MM + hour * hourMm;
  const heightMm = HEAD_MM + plan.batches.length * ROW_MM;
  const every = Math.max(1, Math.ceil(NAME_MM / (DAY_HOURS * hourMm)));
  const marks: Mark[] = [];
  for (let day = 0; day <= days; day++) {
    marks.push(
      stretch(at(x(day * DAY_HOURS), HEAD_MM), at(x(day * DAY_HOURS), heightMm), stroke("faint", LINE.hair)),
    );
    if (day < days && day % every === 0)
      marks.push(
        write(String(day + 1), at(x((day + 0.5) * DAY_HOURS), HEAD_MM - 1.4), {
          heightMm: TEXT.small,
          anchor: "middle",
        }),
      );
  }
  plan.batches.forEach((batch, i) => {
    const top = HEAD_MM + i * ROW_MM + (ROW_MM - BAR_MM) / 2;
    marks.push(
      write(String(batch.number), at(LEFT_MM - 3, top + BAR_MM / 2 + TEXT.normal / 2), { anchor: "end" }),
    );
    for (const coat of batch.coats) {
      const drying: PolygonMark = {
        kind: "polygon",
        points: [
          at(x(coat.workEndHour), top),
          at(x(coat.dryHour), top),
          at(x(coat.dryHour), top + BAR_MM),
          at(x(coat.workEndHour), top + BAR_MM),
        ],
        stroke: stroke("ink", LINE.hair),
        fill: null,
        hatchMm: 1.2,
        layer: "BORDER",
      };
      marks.push(
        ...(coat.dryHour > coat.workEndHour ? [drying] : []),
        rect(
          box(x(coat.startHour), top, Math.max(0.2, x(coat.workEndHour) - x(coat.startHour)), BAR_MM),
          null,
          "ink",
        ),
      );
    }
  });
  marks.push(
    write(
      say(language, (w) => w.panels.paint.days, " · "),
      at(0, HEAD_MM - 1.4),
      { heightMm: TEXT.small },
    ),
  );
  const legend = say(language, (w) => w.panels.paint.legend, " · ");
  marks.push(write(legend, at(LEFT_MM, heightMm + 4), { heightMm: TEXT.small }));
  return { heightMm: heightMm + 6, marks };
}
