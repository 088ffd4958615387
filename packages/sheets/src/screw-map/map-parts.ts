import type { LineResult } from "@pinwright/engine";
import { type MapSigns, momentBlocks, screwTable, signBlocks } from "../assembly/legend.ts";
import { lowerEdge, type PanelView, panelView } from "../assembly/panel-view.ts";
import { type ScrewGroup, type StepSide, screwGroups, sideSlug } from "../assembly/step-facts.ts";
import { type Drawing, drawStep, LATER_SCALE, type SideState } from "../assembly/step-scene.ts";
import { panelSideName, stepBadge, stepTitle, viewText } from "../assembly/step-texts.ts";
import { TEXT } from "../compose/draw.ts";
import { type Block, gap } from "../compose/flow.ts";
import type { Heading } from "../compose/listing.ts";
import { paragraph } from "../compose/paragraph.ts";
import { say } from "../compose/say.ts";
import type { Identity } from "../compose/title-block.ts";
import { type AssemblySheet, assemblyIdentity } from "../identity.ts";
import type { SheetOptions } from "../options.ts";

/** A map that is looked at on the bench is larger than the least that can be read. */
const BENCH_SYMBOL_MM = 5;
/** White round a map for labels that find no room on the panel. */
const MARGIN_MM = 18;

/** A step's side with all that its maps say. */
export class StepMap {
  readonly line: LineResult;
  readonly state: SideState;
  readonly options: SheetOptions;
  readonly groups: readonly ScrewGroup[];
  readonly numbers: ReadonlyMap<string, number>;

  constructor(line: LineResult, state: SideState, options: SheetOptions) {
    this.line = line;
    this.state = state;
    this.options = options;
    const { step, fasteners } = state.now;
    this.groups = screwGroups(line, fasteners);
    const order = step.kind === "recheck" ? step.recheckIds : step.fastenerIds;
    this.numbers = new Map(order.map((id, i) => [id, i + 1]));
  }

  get now(): StepSide {
    return this.state.now;
  }

  view(scale: number): PanelView | null {
    return panelView(this.line, this.now.panelId, this.now.side, scale);
  }

  draw(view: PanelView, marginMm = MARGIN_MM): Drawing {
    const least = this.line.machine.shop.numbers.symbol_mm;
    return drawStep(this.line, view, this.state, {
      language: this.options.language,
      symbolMm: view.scale === 1 ? Math.max(BENCH_SYMBOL_MM, least) : least,
      marginMm,
      numbered: true,
      keys: null,
      letterMm: view.scale === 1 ? TEXT.large : TEXT.normal,
      edge: lowerEdge(this.line, this.now.panelId),
    });
  }

  identity(name: string, type: AssemblySheet["type"], scale: string): Identity {
    return assemblyIdentity(
      this.line,
      {
        kind: "screw-map",
        name: `${sideSlug(this.line, this.now)}-${name}`,
        letters: `S${this.now.step.number}-${name.toUpperCase()}`,
        ...(type === undefined ? {} : { type }),
        title: stepTitle(this.now.step, this.options.language),
        scale,
      },
      this.options,
    );
  }

  heading(title: string): Heading {
    const { language } = this.options;
    return {
      badge: stepBadge(this.now.step),
      title,
      subtitle: panelSideName(this.line, this.now.panelId, this.now.side, language),
      facts: [say(language, (w) => w.steps.screws(this.now.fasteners.length), " · ")],
    };
  }

  notes(widthMm: number): Block[] {
    return [paragraph(viewText(this.line, this.now, this.options.language), widthMm, TEXT.normal, true)];
  }

  screws(widthMm: number): Block[] {
    const { language } = this.options;
    return [
      ...screwTable(this.line, this.groups, this.numbers, language, widthMm),
      gap(1.5),
      ...(this.now.step.kind === "recheck" ? [] : momentBlocks(this.groups, language, widthMm)),
    ];
  }

  signs(drawing: Drawing, widthMm: number): Block[] {
    const { earlier, later, now } = this.state;
    const shown: MapSigns = {
      again: now.step.kind === "recheck",
      dots: drawing.aside > 0,
      items: now.items.length > 0,
      earlier: earlier.items.length + earlier.fasteners.length > 0,
      later: later.length > 0 && drawing.scale >= LATER_SCALE,
    };
    const sample = this.groups[0]?.symbol ?? null;
    const { symbol_mm: symbolMm } = this.line.machine.shop.numbers;
    return [
      ...signBlocks(symbolMm, sample, shown, this.options.language, widthMm),
      ...this.balloonBlocks(drawing, widthMm),
    ];
  }

  private balloonBlocks(drawing: Drawing, widthMm: number): Block[] {
    if (drawing.balloons.length === 0) return [];
    return [
      paragraph(
        say(this.options.language, (w) => w.steps.map.balloons, " · "),
        widthMm,
        TEXT.normal,
        true,
      ),
      ...drawing.balloons.map((b) =>
        paragraph(`${b.number}: ${b.lines.map((l) => l.text).join(" · ")}`, widthMm, TEXT.small),
      ),
    ];
  }
}
